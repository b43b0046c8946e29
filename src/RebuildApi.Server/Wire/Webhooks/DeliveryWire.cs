using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Webhooks;

/// <summary>What became of telling a receiver of one event.</summary>
/// <param name="Id">Id of the message: the header webhook-id, however often it was sent.</param>
/// <param name="Sequence">Number of the event.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="State">Waiting for another attempt, delivered, or given up.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="First">When it was first tried, UTC.</param>
/// <param name="Last">When it was last tried, UTC.</param>
/// <param name="Status">The HTTP status that the receiver last answered; absent when it answered nothing.</param>
/// <param name="Error">What was wrong at the last attempt; absent when nothing was.</param>
public sealed record DeliveryWire(
    string Id, long Sequence, string Kind, DeliveryState State, int Attempts, DateTimeOffset First, DateTimeOffset Last, int? Status, string? Error)
{
    /// <summary>From the store.</summary>
    /// <param name="d">The delivery.</param>
    /// <param name="id">The id of its message.</param>
    public static DeliveryWire From(Delivery d, string id) =>
        new(id, d.Sequence, d.Kind, d.State, d.Attempts, d.First, d.Last, d.Status, d.Error);
}

/// <summary>How an attempt that a person asked for went.</summary>
/// <param name="Id">Id of the message.</param>
/// <param name="Delivered">Whether the receiver took it.</param>
/// <param name="Status">The HTTP status that it answered; absent when it answered nothing.</param>
/// <param name="Error">What was wrong; absent when nothing was.</param>
/// <param name="Milliseconds">How long it took.</param>
public sealed record AttemptWire(string Id, bool Delivered, int? Status, string? Error, long Milliseconds);

/// <summary>What a receiver is sent.</summary>
/// <param name="Type">The kind of event, or ping.</param>
/// <param name="Timestamp">When it happened, UTC.</param>
/// <param name="Data">The event.</param>
/// <typeparam name="T">The event.</typeparam>
public sealed record WebhookBodyWire<T>(string Type, DateTimeOffset Timestamp, T Data);

/// <summary>What a ping carries.</summary>
/// <param name="Webhook">The receiver that is tried.</param>
public sealed record PingDataWire(string Webhook);
