using System.Net;

namespace RebuildApi.Server;

/// <summary>Where the service listens: this machine only, since nobody has to say who they are.</summary>
public static class Listening
{
    /// <summary>Checks the setting.</summary>
    /// <exception cref="InvalidOperationException">It is no address, or one that other machines could reach.</exception>
    public static string Checked(string listen)
    {
        foreach (var part in listen.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!Uri.TryCreate(part, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https"))
                throw new InvalidOperationException($"Rebuild:Listen is {part}, which is not an address such as http://127.0.0.1:5280.");
            if (!IsLoopback(address.Host))
                throw new InvalidOperationException($"Rebuild:Listen is {part}, which other machines could reach. Only loopback addresses are taken, since there are no access tokens.");
        }

        return listen;
    }

    private static bool IsLoopback(string host) =>
        host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
