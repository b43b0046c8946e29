using Microsoft.Extensions.Options;

namespace RebuildApi.Server;

/// <summary>Says at start, in clear words, when what goes over the shop's network can be read by anybody on it.</summary>
public sealed partial class LanWarning(IOptions<ServerOptions> options, ILogger<LanWarning> log) : IHostedService
{
    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var address in Listening.Readable(options.Value))
            LogReadable(log, address);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(LogLevel.Warning,
        "Listening on {Address} without TLS: everybody on this network can read what is sent, tokens and customers' names too. "
        + "Use it on a network that only the shop is on, or set Rebuild:Certificate and listen on https")]
    private static partial void LogReadable(ILogger log, string address);
}
