using Polly;
using Polly.CircuitBreaker;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>Sends what a person asks for, at once, and says how it went.</summary>
public sealed class Redelivery(IStore store, WebhookSender sender, Courier courier, IIdSource ids, TimeProvider time)
{
    /// <summary>Tries the way to a receiver, even one that is left alone just now.</summary>
    public async Task<AttemptWire> Ping(Webhook webhook, CancellationToken cancellation) =>
        (await Send(webhook, WebhookMessage.Ping(webhook.Id, ids.Next(), time.GetUtcNow()), sender.Of(webhook.Id).Single, cancellation)).Wire;

    /// <summary>Sends an event again under the id it has.</summary>
    /// <exception cref="ProblemException">The receiver failed so often that it is left alone just now.</exception>
    public async Task<AttemptWire> Again(Webhook webhook, Delivery before, CancellationToken cancellation)
    {
        var e = (await store.Events(before.Sequence - 1, 1, cancellation)).Single();
        var (wire, failure) = await Send(webhook, WebhookMessage.Of(webhook.Id, e), sender.Of(webhook.Id).Guarded, cancellation);
        await Note(before, wire, failure);
        return wire;
    }

    private async Task<(AttemptWire Wire, Exception? Failure)> Send(Webhook webhook, WebhookMessage message, ResiliencePipeline patience, CancellationToken cancellation)
    {
        var secrets = (await store.Outbox(webhook.Id, cancellation))?.Secrets ?? [];
        var began = time.GetTimestamp();
        try
        {
            var status = await patience.ExecuteAsync(token => courier.Send(webhook, secrets, message, token), cancellation);
            await sender.Recovered(webhook.Id);
            return (new AttemptWire(message.Id, true, status, null, Since(began)), null);
        }
        catch (Exception why) when (why is DeliveryFailedException || Patience.IsFailure(why))
        {
            return (new AttemptWire(message.Id, false, (why as DeliveryFailedException)?.Status, Attempt.Words(why), Since(began)), why);
        }
        catch (BrokenCircuitException)
        {
            throw new ProblemException(Problems.ReceiverResting, "The receiver failed five times in a row; it is left alone for a minute.");
        }
    }

    // What waits is the first in the line, so the line goes on after it.
    private Task Note(Delivery before, AttemptWire wire, Exception? failure) => store.Keep(outboxes =>
    {
        outboxes.Note(failure is null ? before.Taken(wire.Status!.Value, time.GetUtcNow()) : before.Failed(failure, time.GetUtcNow()));
        if (failure is null && before.State == DeliveryState.Waiting)
            outboxes.Reach(before.Webhook, before.Sequence);
    });

    private long Since(long began) => (long)time.GetElapsedTime(began).TotalMilliseconds;
}
