using System.Collections.Concurrent;
using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>When each token was last used: noted in memory, written down once a minute and at the end.</summary>
public sealed partial class LastUses(Func<IStore> store, TimeProvider time, ILogger<LastUses> log) : BackgroundService
{
    private static readonly TimeSpan Each = TimeSpan.FromMinutes(1);
    private readonly ConcurrentDictionary<string, DateTimeOffset> _unwritten = new(StringComparer.Ordinal);

    /// <summary>A token was used now.</summary>
    public void Saw(string token) => _unwritten[token] = time.GetUtcNow();

    /// <summary>When each token was last used.</summary>
    public async ValueTask<ImmutableSortedDictionary<string, DateTimeOffset>> All(CancellationToken cancellation) =>
        (await store().TokenUses(cancellation)).SetItems(_unwritten);

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        await WriteDown(cancellationToken);
    }

    /// <summary>Writes down what was noted since.</summary>
    public async Task WriteDown(CancellationToken cancellation)
    {
        var uses = _unwritten.ToArray();
        if (uses.Length == 0)
            return;
        try
        {
            await store().NoteTokenUses(uses, cancellation);
            foreach (var use in uses)
                _unwritten.TryRemove(use);
        }
        catch (StorageUnavailableException e)
        {
            LogLater(log, e.Code);
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Each, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
            await WriteDown(stoppingToken);
    }

    [LoggerMessage(LogLevel.Warning, "When tokens were last used could not be written down ({Code}); it is tried again")]
    private static partial void LogLater(ILogger log, string code);
}
