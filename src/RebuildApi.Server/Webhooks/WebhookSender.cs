using System.Collections.Concurrent;
using System.Threading.Channels;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>Keeps one loop running for each receiver that stands, for as long as the service runs. Of several copies of the service one sends.</summary>
/// <param name="services">Where the records come from; they may not be readable yet when the service starts.</param>
/// <param name="courier">Sends.</param>
/// <param name="time">The clock.</param>
/// <param name="log">Where faults are told.</param>
public sealed partial class WebhookSender(IServiceProvider services, Courier courier, TimeProvider time, ILogger<WebhookSender> log) : BackgroundService
{
    private static readonly TimeSpan Again = TimeSpan.FromSeconds(10);

    private readonly Channel<string?> _news = Channel.CreateUnbounded<string?>();
    private readonly ConcurrentDictionary<string, Patience> _patience = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Running> _running = new(StringComparer.Ordinal);

    /// <summary>Says that receivers were set up, changed or taken away.</summary>
    public void Changed() => _news.Writer.TryWrite(null);

    /// <summary>Says that a receiver answers again: what waits for it is sent at once.</summary>
    public async Task Recovered(string webhook)
    {
        await Of(webhook).Recovered();
        _news.Writer.TryWrite(webhook);
    }

    /// <summary>The patience with a receiver.</summary>
    public Patience Of(string webhook) => _patience.GetOrAdd(webhook, _ => new Patience(time));

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Duties.Keep(services.GetRequiredService<IStore>, "webhooks", Send, why => CanNotRead(log, why), time, stoppingToken);

    /// <inheritdoc/>
    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken);
        await EndAll();
    }

    private async Task EndAll()
    {
        foreach (var webhook in _running.Keys.ToArray())
            await End(webhook);
    }

    private async Task Send(IStore store, CancellationToken stop)
    {
        Changed();
        var others = store.IsShared ? HearOthers(store, stop) : Task.CompletedTask;
        try
        {
            await foreach (var recovered in _news.Reader.ReadAllAsync(stop))
            {
                if (recovered is not null)
                    await End(recovered);
                await Refresh(stop);
            }
        }
        finally
        {
            await others.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await EndAll();
        }
    }

    // Receivers may be set up or changed through another copy.
    private async Task HearOthers(IStore store, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await foreach (var events in store.After((await store.Head(stop)).Sequence, stop))
                {
                    if (events.Any(e => e.Kind == Webhook.Table.Kind))
                        Changed();
                }
            }
            catch (StorageUnavailableException e)
            {
                CanNotRead(log, e);
                await Task.Delay(Again, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
                Changed();
            }
        }
    }

    private async Task Refresh(CancellationToken stop)
    {
        try
        {
            var store = services.GetRequiredService<IStore>();
            var standing = await store.All<Webhook>(new ShopFilter(About: Webhook.Standing), stop);
            var wanted = standing.Where(w => !w.Paused).ToDictionary(w => w.Id, StringComparer.Ordinal);
            foreach (var (id, running) in _running.ToArray())
            {
                if (!wanted.TryGetValue(id, out var webhook) || webhook.Version != running.Version)
                    await End(id);
            }

            foreach (var webhook in wanted.Values.Where(w => !_running.ContainsKey(w.Id)))
                _running[webhook.Id] = Begin(webhook, store, stop);
        }
        catch (Exception e) when (!stop.IsCancellationRequested)
        {
            CanNotRead(log, e);
            await Task.Delay(Again, time, stop);
            Changed();
        }
    }

    private Running Begin(Webhook webhook, IStore store, CancellationToken stop)
    {
        var ended = CancellationTokenSource.CreateLinkedTokenSource(stop);
        return new Running(webhook.Version, ended, Go(webhook, new Receiver(webhook, Of(webhook.Id), courier, store, time), ended.Token));
    }

    private async Task Go(Webhook webhook, Receiver receiver, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await receiver.Run(stop);
                return;
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                Stumbled(log, webhook.Id, e);
                await Task.Delay(Again, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    private async Task End(string webhook)
    {
        if (!_running.Remove(webhook, out var running))
            return;
        await running.Ended.CancelAsync();
        await running.Loop;
        running.Ended.Dispose();
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The receivers of webhooks can't be read just now.")]
    private static partial void CanNotRead(ILogger log, Exception why);

    [LoggerMessage(Level = LogLevel.Error, Message = "Sending to the webhook {Webhook} stumbled and begins again.")]
    private static partial void Stumbled(ILogger log, string webhook, Exception e);

    private sealed record Running(long Version, CancellationTokenSource Ended, Task Loop);
}
