using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Webhooks;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Webhooks;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Receivers that are told of what happens.</summary>
public static class WebhookEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapWebhooks(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("webhooks");
        group.List<ListOf<WebhookWire>>("/webhooks", List, "listWebhooks", "List the receivers", "Each with how far it has come and what it waits with.")
            .Needs(Scope.Administrator);
        group.Make("/webhooks", Make, "makeWebhook", "Set a receiver up",
                "It is told of what happens from now on, in the order in which it was committed, each event at least once. A message carries what happened and where to read it. It is signed as Standard Webhooks says, with the secret that is shown here and never again.")
            .Needs(Scope.Administrator).Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""{ "id": "invoicing", "name": "Invoicing", "address": "http://127.0.0.1:9000/events", "kinds": ["approval", "invoice-line"], "person": "Ada" }""");
        group.Read("/webhooks/{webhook}", Get, "getWebhook", "Get a receiver", "One receiver; its ETag is what a change must name.").Needs(Scope.Administrator).Fails(Problems.UnknownWebhook);
        group.Change("/webhooks/{webhook}", Change, "changeWebhook", "Change a receiver", "Changes the fields that are sent. What happens while it is paused waits for it.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownWebhook, Problems.InvalidContent)
            .Example("""{ "paused": true }""");
        group.Remove("/webhooks/{webhook}", Remove, "removeWebhook", "Take a receiver away", "Nothing more is sent to it. Its secrets and deliveries are forgotten.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownWebhook);
        group.Make("/webhooks/{webhook}/secrets", Replace, "replaceWebhookSecret", "Replace the secret of a receiver",
                "For some hours deliveries carry the signatures of both, so that the receiver can be changed over without losing any.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownWebhook)
            .Example("""{ "hours": 24 }""");
    }

    /// <summary>A receiver that stands.</summary>
    internal static async ValueTask<Webhook> Require(IStore store, string webhook, CancellationToken cancellation) =>
        await store.Find<Webhook>(webhook, cancellation) is { Ended: false } found ? found : throw Unknown();

    private static Listing<WebhookWire, ListOf<WebhookWire>> List(IStore store)
    {
        PageReader<WebhookWire> pages = async (after, limit, cancellation) =>
        {
            var page = await store.Page<Webhook>(new ShopFilter(About: Webhook.Standing), after, limit, cancellation);
            var shown = new List<WebhookWire>();
            foreach (var webhook in page.Items)
                shown.Add(await Shown(store, webhook, cancellation));
            return new Page<WebhookWire>([.. shown], page.Next);
        };
        return new(pages, (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<WebhookMadeWire>> Make(
        Body<WebhookRequest> body, WebhookDesk desk, WebhookSender sender, SecretKeeper keeper, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var webhook = await desk.Made(body.Value, cancellation);
        var secret = new WebhookSecret(WebhookSignature.NewSecret(), time.GetUtcNow(), null);
        var answer = await store.Write(body.Request, session =>
        {
            if (session.Find<Webhook>(webhook.Id) is not null)
                throw new DuplicateIdException("webhook", webhook.Id);
            var put = session.Put(webhook, 0);
            session.Outboxes.Open(put.Id, keeper.Close(secret));
            var shown = new WebhookMadeWire(WebhookWire.Bare(put), secret.Secret);
            return Answer.Created("/v1/webhooks/" + put.Id, shown, Etags.Of(Etags.Webhook, put.Version)) with { Kept = Answer.Changed(shown with { Secret = null }).Body };
        }, cancellation);
        sender.Changed();
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Found<WebhookWire>> Get(string webhook, HttpContext http, IStore store, CancellationToken cancellation)
    {
        var found = await Require(store, webhook, cancellation);
        // Only told: deliveries go on at the same version, so "as you have it" would be wrong.
        http.Response.Headers.ETag = Etags.Of(Etags.Webhook, found.Version);
        return new(await Shown(store, found, cancellation));
    }

    private static async Task<ChangedAnswer<WebhookWire>> Change(
        string webhook, HttpContext http, Body<WebhookChangeRequest> body, WebhookDesk desk, WebhookSender sender, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Webhook);
        await Require(store, webhook, cancellation);
        var change = await desk.Changed(body.Value, cancellation);
        var answer = await store.Write(body.Request, session =>
        {
            var put = session.Put(change(Require(session, webhook)), expected);
            return Answer.Changed(WebhookWire.Bare(put), Etags.Of(Etags.Webhook, put.Version));
        }, cancellation);
        sender.Changed();
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<WebhookWire>> Remove(string webhook, NoBody body, WebhookSender sender, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var put = session.Put(Require(session, webhook) with { Ended = true }, null);
            session.Outboxes.Close(webhook);
            return Answer.Changed(WebhookWire.Bare(put));
        }, cancellation);
        sender.Changed();
        return new(answer, body.Request.DryRun);
    }

    private static async Task<CreatedAnswer<WebhookSecretWire>> Replace(
        string webhook, Body<WebhookSecretRequest> body, SecretKeeper keeper, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var secret = new WebhookSecret(WebhookSignature.NewSecret(), time.GetUtcNow(), null);
        var oldEnd = secret.Made.AddHours(body.Value.Hours);
        var answer = await store.Write(body.Request, session =>
        {
            Require(session, webhook);
            session.Outboxes.Replace(webhook, keeper.Close(secret), oldEnd);
            var shown = new WebhookSecretWire(secret.Secret, oldEnd);
            return Answer.Created("/v1/webhooks/" + webhook, shown) with { Kept = Answer.Changed(shown with { Secret = null }).Body };
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<WebhookWire> Shown(IStore store, Webhook webhook, CancellationToken cancellation)
    {
        var reached = (await store.Outbox(webhook.Id, cancellation))?.Sequence ?? 0;
        var waiting = await store.Deliveries(webhook.Id, DeliveryState.Waiting, null, 1, cancellation);
        return WebhookWire.From(webhook, reached, waiting.Items.Select(WebhookMessage.Shown).FirstOrDefault());
    }

    private static Webhook Require(IWriteSession session, string webhook) =>
        session.Find<Webhook>(webhook) is { Ended: false } found ? found : throw Unknown();

    private static ProblemException Unknown() => new(Problems.UnknownWebhook, "No receiver of this id is set up.");
}
