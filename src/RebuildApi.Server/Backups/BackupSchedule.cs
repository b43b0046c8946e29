using Microsoft.Extensions.Options;
using RebuildApi.Storage;

namespace RebuildApi.Server.Backups;

/// <summary>Makes a backup each day, and soon after a start when one was missed. A failure is tried again, is logged, and shows in readiness and in the list.</summary>
public sealed partial class BackupSchedule(BackupDesk desk, IOptions<ServerOptions> options, TimeProvider time, ILogger<BackupSchedule> log) : BackgroundService
{
    /// <summary>How often the clock is looked at; also how long a failure waits to be tried again. Waiting for the moment itself would miss it when a PC sleeps.</summary>
    public static readonly TimeSpan Look = TimeSpan.FromMinutes(1);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (BackupTimes.Of(options.Value.BackupAt, time.LocalTimeZone) is not { } times)
            return;
        using var clock = new PeriodicTimer(Look, time);
        while (await clock.WaitForNextTickAsync(stoppingToken))
            await MakeIfDue(times, stoppingToken);
    }

    private async Task MakeIfDue(BackupTimes times, CancellationToken stop)
    {
        try
        {
            if (!IsDue(times))
                return;
            // Copies that share the folder make one between them.
            await using var turn = await desk.Turn(stop);
            if (!IsDue(times))
                return;
            var made = await desk.Make(BackupManifest.BySchedule, stop);
            LogMade(log, made.Path, made.Manifest!.Entries, made.Manifest.Head);
            foreach (var old in desk.Prune())
                LogRemoved(log, old);
        }
        catch (Exception e) when (e is StorageUnavailableException or IOException or UnauthorizedAccessException)
        {
            LogFailed(log, e.Message);
        }
    }

    // A backup asked for by a person counts too: what matters is that there is one.
    private bool IsDue(BackupTimes times) =>
        !(desk.Shelf.List().Where(b => b.Verified).Select(b => b.Manifest?.Made).FirstOrDefault() >= times.LastDue(time.GetUtcNow()));

    [LoggerMessage(LogLevel.Information, "Backup {Path} made and checked: {Entries} entries, head {Head}")]
    private static partial void LogMade(ILogger log, string path, long entries, string head);

    [LoggerMessage(LogLevel.Information, "Backup {Name} removed: enough newer ones are kept")]
    private static partial void LogRemoved(ILogger log, string name);

    [LoggerMessage(LogLevel.Error, "No backup was made: {Reason} It is tried again in a minute.")]
    private static partial void LogFailed(ILogger log, string reason);
}
