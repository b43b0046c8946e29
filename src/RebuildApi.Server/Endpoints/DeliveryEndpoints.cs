using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Webhooks;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What became of telling receivers, and what a person does about it.</summary>
public static class DeliveryEndpoints
{
    private static readonly QueryOption State = new("state", "Only those that stand so: dead are those that were given up.", "string", ["waiting", "delivered", "dead"]);

    /// <summary>The routes. What they send is done at once and not undone, so there is no dry run; a receiver knows a repeated message by its id.</summary>
    public static void MapDeliveries(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("webhooks");
        group.List<ListOf<DeliveryWire>>("/webhooks/{webhook}/deliveries", List, "listDeliveries", "List the deliveries to a receiver",
                "In the order of their events: those given up, the one that waits, and the last thousand events' worth of those that went well.")
            .Needs(Scope.Administrator).Takes(State).Fails(Problems.UnknownWebhook);
        group.Act("/webhooks/{webhook}/deliveries/{delivery}/redeliveries", Again, "redeliver", "Send a delivery again",
                "At once, under the id it has, outside the order of the others; the answer says how it went.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownWebhook, Problems.UnknownDelivery, Problems.ReceiverResting);
        group.Act("/webhooks/{webhook}/pings", Ping, "pingWebhook", "Try the way to a receiver",
                "Sends a message of the type ping, signed like all others. When it is taken, what waits for the receiver is sent at once.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownWebhook);
    }

    private static async Task<Listing<DeliveryWire, ListOf<DeliveryWire>>> List(string webhook, HttpContext http, IStore store, CancellationToken cancellation)
    {
        await WebhookEndpoints.Require(store, webhook, cancellation);
        DeliveryState? state = QueryText.Of(http, State.Name) is null
            ? null
            : Enum.Parse<DeliveryState>(QueryText.Word(http, State.Name, [.. State.Allowed!.Value])!, ignoreCase: true);
        PageReader<Delivery> pages = (after, limit, stop) => store.Deliveries(webhook, state, after, limit, stop);
        return new(pages.Select(WebhookMessage.Shown), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<AttemptWire>> Again(string webhook, string delivery, NoBody body, Redelivery redelivery, IStore store, CancellationToken cancellation)
    {
        var receiver = await WebhookEndpoints.Require(store, webhook, cancellation);
        var found = WebhookMessage.SequenceOf(webhook, delivery) is { } sequence ? await store.Delivery(webhook, sequence, cancellation) : null;
        if (found is not null && WebhookMessage.IdOf(webhook, found.Sequence, found.At) != delivery)
            found = null;
        return new(await redelivery.Again(receiver, found ?? throw new ProblemException(Problems.UnknownDelivery, "The receiver has no such delivery."), cancellation));
    }

    private static async Task<Found<AttemptWire>> Ping(string webhook, NoBody body, Redelivery redelivery, IStore store, CancellationToken cancellation) =>
        new(await redelivery.Ping(await WebhookEndpoints.Require(store, webhook, cancellation), cancellation));
}
