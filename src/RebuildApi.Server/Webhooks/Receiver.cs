using Polly.CircuitBreaker;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>
/// Tells one receiver of everything it wants, one after the other in the order of commit: the next waits until the one before was delivered or given
/// up. How far it came is kept, so it goes on there after a restart; what was under way is then sent again under the same id.
/// </summary>
public sealed class Receiver(Webhook webhook, Patience patience, Courier courier, IStore store, TimeProvider time)
{
    private const int AtOnce = 200;

    /// <summary>Goes on until it is stopped, or the receiver wants nothing more.</summary>
    public async Task Run(CancellationToken stop)
    {
        if (await store.Outbox(webhook.Id, stop) is not { } outbox)
            return;
        for (var seen = outbox.Sequence; ;)
        {
            var events = await store.Events(seen, AtOnce, stop);
            foreach (var e in events.Where(e => webhook.Wants(e.Kind)))
            {
                if (!await Deliver(e, stop))
                    return;
            }

            seen = events.IsEmpty ? seen : events[^1].Sequence;
            if (events.Length == AtOnce)
                await store.Keep(outboxes => outboxes.Reach(webhook.Id, seen));
            else
                await store.NextEvent(seen, stop);
        }
    }

    private async Task<bool> Deliver(StoreEvent e, CancellationToken stop)
    {
        var delivery = await store.Delivery(webhook.Id, e.Sequence, stop) ?? Attempt.New(webhook.Id, e, time.GetUtcNow());
        try
        {
            await patience.Persistent.ExecuteAsync(async token => delivery = await Try(e, delivery, failed => delivery = failed, token), stop);
        }
        catch (Exception failed) when (Patience.IsFailure(failed) || failed is BrokenCircuitException)
        {
            delivery = delivery with { State = DeliveryState.Dead };
        }
        catch (DeliveryFailedException)
        {
            await store.Pause(webhook.Id);
            return false;
        }

        await store.Keep(outboxes =>
        {
            outboxes.Note(delivery);
            outboxes.Reach(webhook.Id, e.Sequence);
        });
        return true;
    }

    private async Task<Delivery> Try(StoreEvent e, Delivery before, Action<Delivery> onFailure, CancellationToken token)
    {
        // Read anew each time: a secret may have been replaced while it waited.
        var secrets = (await store.Outbox(webhook.Id, token))?.Secrets ?? [];
        try
        {
            var status = await patience.Guarded.ExecuteAsync(t => courier.Send(webhook, secrets, WebhookMessage.Of(webhook.Id, e), t), token);
            return before.Taken(status, time.GetUtcNow());
        }
        catch (Exception why) when (why is DeliveryFailedException || Patience.IsFailure(why))
        {
            var failed = before.Failed(why, time.GetUtcNow());
            onFailure(failed);
            await store.Keep(outboxes => outboxes.Note(failed));
            throw;
        }
    }
}
