using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;

namespace RebuildApi.Server.Endpoints;

/// <summary>How routes are declared: each with its words, its query parameters and what can go wrong.</summary>
public static class Routes
{
    private static readonly ListForm[] Forms = [ListForm.Json, ListForm.Csv, ListForm.Ndjson];

    /// <summary>The routes of one resource under <c>/v1</c>. Reading asks for the scope <c>read</c>, anything else for <c>bench</c>; a route that asks for another says so with <c>Needs</c>.</summary>
    public static RouteGroupBuilder Resource(this IEndpointRouteBuilder routes, string tag) =>
        routes.MapGroup("/v1").WithTags(tag).WithMetadata(new Strict()).AdmitByVerb();

    /// <summary>A route that reads one thing.</summary>
    public static RouteHandlerBuilder Read(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Get, pattern, handler).Described(name, summary, description);

    /// <summary>A route that makes something, may be tried with a dry run and repeated by its idempotency key.</summary>
    public static RouteHandlerBuilder Make(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Post, pattern, handler).Described(name, summary, description).WithMetadata(QueryOption.DryRun, new TakesKey());

    /// <summary>A route that changes something that is there, at the version the client names.</summary>
    public static RouteHandlerBuilder Change(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Patch, pattern, handler).Described(name, summary, description)
            .WithMetadata(QueryOption.DryRun, new TakesKey(), new NeedsVersion(), new MayFail(Problems.VersionConflict, Problems.PreconditionRequired));

    /// <summary>A route that puts something whole in the place of what is there, at the version the client names.</summary>
    public static RouteHandlerBuilder Replace(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Put, pattern, handler).Described(name, summary, description)
            .WithMetadata(QueryOption.DryRun, new TakesKey(), new NeedsVersion(), new MayFail(Problems.VersionConflict, Problems.PreconditionRequired));

    /// <summary>A route that takes something away; it needs no body, but still a content type that no web page can send unasked.</summary>
    public static RouteHandlerBuilder Remove(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Delete, pattern, handler).Described(name, summary, description).WithMetadata(QueryOption.DryRun, new TakesKey());

    /// <summary>A route that does something outside the records at once: it can't be undone, so there is no dry run, and repeating it does it again.</summary>
    public static RouteHandlerBuilder Act(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Post, pattern, handler).Described(name, summary, description);

    /// <summary>A route that works something out and stores nothing.</summary>
    public static RouteHandlerBuilder WorkOut(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        group.MapLater(HttpMethods.Post, pattern, handler).Described(name, summary, description).Needs(Scope.Read)
            .WithMetadata(QueryOption.Units);

    /// <summary>A list in three forms: JSON pages, <c>.csv</c> and <c>.ndjson</c>.</summary>
    /// <typeparam name="TEnvelope">What a JSON page is wrapped in.</typeparam>
    public static ListRoutes List<TEnvelope>(this RouteGroupBuilder group, string pattern, Delegate handler, string name, string summary, string description) =>
        new([.. Forms.Select(form => group.ListAs<TEnvelope>(form, pattern, handler, name, summary, description))]);

    /// <summary>What can go wrong besides what can go wrong everywhere.</summary>
    public static RouteHandlerBuilder Fails(this RouteHandlerBuilder route, params Problem[] problems) => route.WithMetadata(new MayFail(problems));

    /// <summary>Its answer carries a tag, so that a client that has it already is told so with 304.</summary>
    public static RouteHandlerBuilder Tagged(this RouteHandlerBuilder route) => route.WithMetadata(new CarriesTag());

    /// <summary>A body that shows how it is done; a test sends it.</summary>
    public static RouteHandlerBuilder Example(this RouteHandlerBuilder route, string json) => route.WithMetadata(new BodyExample(json));

    /// <summary>Lengths in millimetres or inches on request.</summary>
    public static RouteHandlerBuilder InUnits(this RouteHandlerBuilder route) => route.WithMetadata(QueryOption.Units);

    private static RouteHandlerBuilder ListAs<TEnvelope>(
        this RouteGroupBuilder group, ListForm form, string pattern, Delegate handler, string name, string summary, string description)
    {
        var form1 = form == ListForm.Json ? "" : form == ListForm.Csv ? "Csv" : "Ndjson";
        var words = form == ListForm.Json ? summary : $"{summary} ({form.Suffix})";
        var route = group.MapLater(HttpMethods.Get, pattern + form.Suffix, handler).Described(name + form1, words, description)
            .WithMetadata(form, QueryOption.Units, QueryOption.Limit, QueryOption.Cursor);
        if (form == ListForm.Csv)
            route.WithMetadata(QueryOption.Bom, QueryOption.Separator);
        return form == ListForm.Json ? route.Produces<TEnvelope>(200, form.MediaType) : route.Produces<string>(200, form.MediaType);
    }

    private static RouteHandlerBuilder Described(this RouteHandlerBuilder route, string name, string summary, string description) =>
        route.WithName(name).WithSummary(summary).WithDescription(description);
}

/// <summary>The three routes of a list.</summary>
/// <param name="All">One for each form.</param>
public sealed record ListRoutes(IReadOnlyList<RouteHandlerBuilder> All)
{
    /// <summary>What can go wrong besides what can go wrong everywhere.</summary>
    public ListRoutes Fails(params Problem[] problems) => With(new MayFail(problems));

    /// <summary>Its answer carries a tag, so that a client that has it already is told so with 304.</summary>
    public ListRoutes Tagged() => With(new CarriesTag());

    /// <summary>Asks for more than <c>read</c>.</summary>
    public ListRoutes Needs(Scope least) => With(new Admits(least));

    /// <summary>A further query parameter.</summary>
    public ListRoutes Takes(QueryOption option) => With(option);

    /// <summary>Its address without a suffix gives a further form to who asks for it by Accept.</summary>
    /// <param name="form">The form.</param>
    /// <param name="problems">What can go wrong with it besides.</param>
    public ListRoutes AlsoAs(ListForm form, params Problem[] problems)
    {
        All[0].WithMetadata(new Offer(form), new MayFail([Problems.NotAcceptable, .. problems]));
        return this;
    }

    private ListRoutes With(object metadata)
    {
        foreach (var route in All)
            route.WithMetadata(metadata);
        return this;
    }
}

/// <summary>What can go wrong at an address.</summary>
/// <param name="Problems">The problems.</param>
public sealed record MayFail(params Problem[] Problems);

/// <summary>Says that an address takes an idempotency key.</summary>
public sealed record TakesKey;

/// <summary>Says that the answer of an address carries a tag.</summary>
public sealed record CarriesTag;

/// <summary>Says that an address needs If-Match.</summary>
public sealed record NeedsVersion;

/// <summary>A body that shows how it is done.</summary>
/// <param name="Json">The body.</param>
public sealed record BodyExample(string Json);
