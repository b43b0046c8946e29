using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>
/// Removes at each start, and each hour, the photos that an erasure named and that are still there: when the machine died between an erasure and their removal, or
/// when somebody put an old copy of their folder back.
/// </summary>
public sealed partial class ErasedSweep(IServiceProvider services, TimeProvider time, ILogger<ErasedSweep> log) : BackgroundService
{
    /// <summary>How long it waits between two looks.</summary>
    public static readonly TimeSpan Again = TimeSpan.FromHours(1);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var clock = new PeriodicTimer(Again, time);
        do
        {
            await Look(stoppingToken);
        }
        while (await clock.WaitForNextTickAsync(stoppingToken));
    }

    private async Task Look(CancellationToken stop)
    {
        try
        {
            // Asked for here and not in the constructor: a damaged database must not keep the service from saying so.
            if (await ErasedFiles.Sweep(services.GetRequiredService<IStore>(), services.GetRequiredService<AttachmentFolder>(), stop) is > 0 and var removed)
                LogRemoved(log, removed);
        }
        catch (StorageUnavailableException e)
        {
            LogFailed(log, e.Message);
        }
    }

    [LoggerMessage(LogLevel.Information, "{Count} files that an erasure named were still there and are removed now")]
    private static partial void LogRemoved(ILogger log, int count);

    [LoggerMessage(LogLevel.Warning, "Whether files that were erased are still there could not be looked at: {Reason} It is tried again in an hour.")]
    private static partial void LogFailed(ILogger log, string reason);
}
