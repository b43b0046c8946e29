using System.Text.Json.Serialization;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>What became of telling one receiver of one event.</summary>
/// <param name="Webhook">The receiver.</param>
/// <param name="Sequence">The event.</param>
/// <param name="At">When it happened, UTC.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="State">How it stands.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="First">When it was first tried, UTC.</param>
/// <param name="Last">When it was last tried, UTC.</param>
/// <param name="Status">The HTTP status that the receiver last answered; null when it answered nothing.</param>
/// <param name="Error">What was wrong at the last try; null when nothing was.</param>
public sealed record Delivery(
    string Webhook, long Sequence, DateTimeOffset At, string Kind, DeliveryState State, int Attempts, DateTimeOffset First, DateTimeOffset Last, int? Status, string? Error);

/// <summary>How a delivery stands.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<DeliveryState>))]
public enum DeliveryState
{
    /// <summary>It failed and is tried again.</summary>
    Waiting,

    /// <summary>The receiver took it.</summary>
    Delivered,

    /// <summary>It was given up; a person may send it again.</summary>
    Dead,
}
