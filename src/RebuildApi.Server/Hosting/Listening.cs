using System.Net;

namespace RebuildApi.Server;

/// <summary>Where the service listens: this machine, unless the shop says plainly that its network may come in too.</summary>
public static class Listening
{
    /// <summary>Checks the settings that belong together.</summary>
    /// <exception cref="InvalidOperationException">An address is none, or one that other machines could reach though not all that this takes was set.</exception>
    public static void Checked(ServerOptions options)
    {
        if (options.Access is not (ServerOptions.Tokens or ServerOptions.ThisMachine))
            throw new InvalidOperationException($"Rebuild:Access is {options.Access}; it is {ServerOptions.Tokens} or {ServerOptions.ThisMachine}.");
        foreach (var part in Parts(options))
        {
            if (!Uri.TryCreate(part, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https"))
                throw new InvalidOperationException($"Rebuild:Listen is {part}, which is not an address such as http://127.0.0.1:5280 or, for the network, http://0.0.0.0:5280.");
            if (address.Scheme == "https" && options.Certificate is null)
                throw new InvalidOperationException($"Rebuild:Listen is {part}, which needs a certificate: set Rebuild:Certificate to a .pfx or .pem file.");
            if (!IsLoopback(address))
                RequireLan(part, options);
        }
    }

    /// <summary>The addresses on which others could read along: those without TLS that other machines reach.</summary>
    public static IEnumerable<string> Readable(ServerOptions options) =>
        Parts(options).Select(p => new Uri(p)).Where(a => a.Scheme == "http" && !IsLoopback(a)).Select(a => a.OriginalString);

    private static string[] Parts(ServerOptions options) => options.Listen.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static void RequireLan(string part, ServerOptions options)
    {
        if (!options.AsksForTokens)
            throw Reachable(part, $"With Rebuild:Access={ServerOptions.ThisMachine} nobody has to say who they are, so only loopback addresses are taken.");
        if (!options.Lan)
            throw Reachable(part, "Set Rebuild:Lan=true if that is meant.");
        if (!options.Hosts.Except(ServerOptions.OwnHosts).Any())
            throw Reachable(part, "Set Rebuild:Hosts to the names and addresses by which the benches reach it, such as [\"shop-pc\", \"192.168.1.20\"].");
    }

    private static InvalidOperationException Reachable(string part, string cure) =>
        new($"Rebuild:Listen is {part}, which other machines could reach. {cure}");

    private static bool IsLoopback(Uri address) =>
        address.Host == "localhost" || (IPAddress.TryParse(address.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip));
}
