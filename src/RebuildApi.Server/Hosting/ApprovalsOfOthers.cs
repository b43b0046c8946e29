using System.Collections.Concurrent;
using RebuildApi.PluginHost;
using RebuildApi.Storage;

namespace RebuildApi.Server;

/// <summary>
/// Takes over what was approved through another copy of the service: the chain holds every approval, and a plug-in of exactly that hash that lies here too is
/// loaded here. One that comes to lie here later is loaded then.
/// </summary>
public sealed partial class ApprovalsOfOthers(IServiceProvider services, IPluginCatalog catalog, TimeProvider time, ILogger<ApprovalsOfOthers> log) : BackgroundService
{
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(10);
    private const int AtOnce = 100;
    private readonly ConcurrentDictionary<(string Id, string Sha256), string> _approved = new();
    private long _seen;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                var store = services.GetRequiredService<IStore>();
                if (!store.IsShared)
                    return;
                await Follow(store, stoppingToken);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (StorageUnavailableException)
            {
                await Task.Delay(Again, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task Follow(IStore store, CancellationToken stop)
    {
        catalog.Changed += Look;
        try
        {
            var head = (await store.Head(stop)).Sequence;
            await TakeOver(store, stop);
            await foreach (var events in store.After(head, stop))
            {
                if (events.Any(e => e.Kind == Acts.PluginApproval))
                    await TakeOver(store, stop);
            }
        }
        finally
        {
            catalog.Changed -= Look;
        }
    }

    private async Task TakeOver(IStore store, CancellationToken stop)
    {
        while (await store.Audit(new AuditFilter(Kind: Acts.PluginApproval), _seen, AtOnce, stop) is { IsEmpty: false } entries)
        {
            foreach (var entry in entries)
            {
                var act = Act.Read((await store.AuditRecord(entry.Event.Sequence, stop))!.Body);
                _approved[(act.Subject, act.Details["sha256"])] = act.Person;
            }

            _seen = entries[^1].Event.Sequence;
        }

        foreach (var status in catalog.Plugins)
            await Approve(status, stop);
    }

    private void Look(object? sender, PluginStatus status) => _ = Task.Run(() => Approve(status, CancellationToken.None));

    private async Task Approve(PluginStatus status, CancellationToken stop)
    {
        if (status.State != PluginState.AwaitingApproval || status.Sha256 is not { } sha256 || !_approved.TryGetValue((status.Id, sha256), out var person))
            return;
        try
        {
            await catalog.Approve(status.Id, sha256, person, stop);
            LogTaken(log, status.Id, sha256, person);
        }
        catch (Exception e) when (e is PluginNotFoundException or PluginChangedException)
        {
            // It went or changed meanwhile; what lies here now is told of in its turn.
        }
    }

    [LoggerMessage(LogLevel.Information, "The plug-in {Plugin} is loaded here too: {Person} approved {Sha256} through another copy of the service")]
    private static partial void LogTaken(ILogger log, string plugin, string sha256, string person);
}
