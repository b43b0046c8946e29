using Polly.Timeout;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>What one attempt to deliver makes of a delivery.</summary>
public static class Attempt
{
    /// <summary>A delivery that nobody has tried yet.</summary>
    public static Delivery New(string webhook, StoreEvent e, DateTimeOffset now) =>
        new(webhook, e.Sequence, e.At, e.Kind, DeliveryState.Waiting, 0, now, now, null, null);

    /// <summary>The receiver took it.</summary>
    public static Delivery Taken(this Delivery before, int status, DateTimeOffset now) =>
        before with { State = DeliveryState.Delivered, Attempts = before.Attempts + 1, Last = now, Status = status, Error = null };

    /// <summary>It did not arrive, or was not taken.</summary>
    public static Delivery Failed(this Delivery before, Exception why, DateTimeOffset now) =>
        before with { Attempts = before.Attempts + 1, Last = now, Status = (why as DeliveryFailedException)?.Status, Error = Words(why) };

    /// <summary>What went wrong, in words for the person who looks after the receiver.</summary>
    public static string Words(Exception why) =>
        why is TimeoutRejectedException ? FormattableString.Invariant($"It did not answer within {Patience.OneAttempt.TotalSeconds} seconds.") : why.Message;
}
