using System.Globalization;
using System.Text.Json;
using RebuildApi.Server.Json;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Webhooks;

/// <summary>What a receiver is sent. The id stays the same however often it is sent, so that a receiver can tell what it has already.</summary>
/// <param name="Id">Id of the message.</param>
/// <param name="Body">The JSON.</param>
public sealed record WebhookMessage(string Id, byte[] Body)
{
    /// <summary>The message of an event. It says what happened and where to read it, and no more: a body kept by a receiver then holds nothing of a customer.</summary>
    public static WebhookMessage Of(string webhook, StoreEvent e) => new(IdOf(webhook, e.Sequence, e.At), Json(e.Kind, e.At, EventWire.From(e)));

    /// <summary>A message that only tries the way.</summary>
    public static WebhookMessage Ping(string webhook, string id, DateTimeOffset now) => new($"{webhook}-ping-{id}", Json("ping", now, new PingDataWire(webhook)));

    /// <summary>The id of the message of an event. The time is in it because a restored backup gives the same numbers again, to other events.</summary>
    public static string IdOf(string webhook, long sequence, DateTimeOffset at) =>
        string.Create(CultureInfo.InvariantCulture, $"{webhook}-{sequence}-{at.ToUnixTimeMilliseconds()}");

    /// <summary>A delivery as it is answered.</summary>
    public static DeliveryWire Shown(Delivery delivery) => DeliveryWire.From(delivery, IdOf(delivery.Webhook, delivery.Sequence, delivery.At));

    /// <summary>The event that an id of a message names; null when it is none of this receiver.</summary>
    public static long? SequenceOf(string webhook, string id)
    {
        if (!id.StartsWith(webhook + "-", StringComparison.Ordinal))
            return null;
        var number = id[(webhook.Length + 1)..].Split('-')[0];
        return long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) ? sequence : null;
    }

    private static byte[] Json<T>(string type, DateTimeOffset time, T data) =>
        JsonSerializer.SerializeToUtf8Bytes(new WebhookBodyWire<T>(type, time, data), WireJson.Options);
}
