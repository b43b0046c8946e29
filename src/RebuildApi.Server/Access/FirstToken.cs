using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>
/// Gives the first start of a data folder its administrator's token, once it listens. It is written to the console and nowhere else: what a logger gets
/// may be kept for years. A folder that ever had a token gets none.
/// </summary>
public sealed class FirstToken(Func<IStore> store, TokensAsked asked, IServer server, TimeProvider time, OwnConsole console) : IHostedLifecycleService
{
    /// <summary>Its name.</summary>
    public const string Name = "administrator";

    /// <inheritdoc/>
    public async Task StartedAsync(CancellationToken cancellationToken)
    {
        if (!asked.Yes)
            return;
        try
        {
            var records = store();
            if ((await records.Page<AccessToken>(ShopFilter.Every, null, 1, cancellationToken)).Items.IsEmpty)
                await console.Out.WriteLineAsync(Words(await TokenDesk.Issue(records, new NewToken(Name, Scope.Administrator), time, cancellationToken)));
        }
        catch (StorageUnavailableException)
        {
            // What is wrong with the records is said where they are opened; the service answers so until it is mended.
        }
    }

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private string Words(string secret)
    {
        var address = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault()?.TrimEnd('/') ?? "";
        return $"""

            This data folder had no access token yet. This is its administrator's token; it is shown this once, and only its hash is kept.

              token for programs   {secret}
              sign in a browser    {SignInLink.Of(address, secret)}

            Give each bench and program one of its own: POST /v1/tokens, or the command: token add NAME --scope bench
            If this one is lost: token add NAME --scope administrator

            """;
    }
}

/// <summary>The console of the person who starts the program.</summary>
/// <param name="Out">Where it writes.</param>
public sealed record OwnConsole(TextWriter Out);

/// <summary>An address that signs a browser in. The token stands behind #, which a browser never sends.</summary>
public static class SignInLink
{
    /// <summary>The address, for a browser on this machine.</summary>
    /// <param name="address">Where the service listens.</param>
    /// <param name="secret">The token.</param>
    public static string Of(string address, string secret)
    {
        var here = address.Replace("//0.0.0.0", "//localhost", StringComparison.Ordinal).Replace("//[::]", "//localhost", StringComparison.Ordinal);
        return $"{here.TrimEnd('/')}/sign-in#{secret}";
    }
}
