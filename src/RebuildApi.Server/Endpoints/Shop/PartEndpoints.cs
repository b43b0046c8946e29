using System.Collections.Immutable;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The shop's own price list.</summary>
public static class PartEndpoints
{
    /// <summary>Which kind is wanted.</summary>
    internal static readonly QueryOption Kind = new("kind", "Only those of this kind, as family/kind: brackenmere-4/hub-3-4.");

    /// <summary>The routes.</summary>
    public static void MapParts(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("shop");
        group.List<ListOf<PartWire>>("/parts", List, "listParts", "List the price list", "The shop's own parts to order, in the order of their numbers. The table can be changed and taken over again.")
            .Takes(Kind);
        group.Make("/parts", Add, "addPart", "Put a part on the price list", "Prices are the shop's own; a family never brings any.")
            .Needs(Scope.Office).Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "id": "hub-34-new", "family": "brackenmere-4", "kind": "hub-3-4", "name": "Third and fourth hub", "vendor": "Harbour Gear Supply (invented)",
                  "price": { "minor": 11800, "currency": "XXX" }, "leadDays": 6 }
                """);
        group.Make("/parts/imports", Import, "importParts", "Take a price list over",
                "From JSON, or from CSV with the columns that the list shows. New numbers are added, known ones changed; nothing is taken away. Each fault names its row and column.")
            .Needs(Scope.Office).WithMetadata(BadRows.Option, new BodyLimit(16 << 20))
            .Fails(Problems.InvalidContent, Problems.MalformedCsv)
            .Example("""
                { "rows": [{ "id": "sleeve-34-new", "family": "brackenmere-4", "kind": "sleeve-3-4", "name": "Third and fourth sleeve", "vendor": "Harbour Gear Supply (invented)",
                  "price": { "minor": 9600, "currency": "XXX" }, "leadDays": 6 }] }
                """);
        group.Read("/parts/{part}", Get, "getPart", "Get a part of the price list", "One part; its ETag is what a change must name.").Tagged().Fails(Problems.UnknownPartId);
        group.Change("/parts/{part}", Change, "changePart", "Change a part of the price list", "Changes the fields that are sent. Quotes keep the price that they were made with.")
            .Needs(Scope.Office).Fails(Problems.UnknownPartId, Problems.InvalidContent)
            .Example("""{ "price": { "minor": 12400, "currency": "XXX" } }""");
    }

    private static async Task<Listing<PartWire, ListOf<PartWire>>> List(HttpContext http, IStore store, CancellationToken cancellation)
    {
        var (rates, wanted) = (await store.Rates(cancellation), new ShopFilter(About: QueryText.Of(http, Kind.Name)));
        PageReader<Part> pages = (after, limit, stop) => store.Page<Part>(wanted, after, limit, stop);
        return new(pages.Select(p => PartWire.From(p, rates)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<PartWire>> Add(Body<PartRequest> body, FamilyBook families, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var (rates, complaints) = (session.Rates(), new Complaints());
            var part = new PartIntake(families, rates).Take(body.Value, p => p, complaints);
            complaints.ThrowIfAny(Problems.InvalidContent);
            if (session.Find<Part>(part.Id) is not null)
                throw new DuplicateIdException("part", part.Id);
            var put = session.Put(part, null);
            return Answer.Created("/v1/parts/" + put.Id, PartWire.From(put, rates), Etags.Of(Etags.Part, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<ImportWire>> Import(
        ListBody<PartsRequest, PartRequest> body, FamilyBook families, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var intake = new PartIntake(families, session.Rates());
            var takeover = new Takeover<PartRequest, Part>(session, intake.Take, r => r.Version, p => p.At(0));
            return Answer.Changed(takeover.Of(body.Rows, body.SkipsBad));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Found<PartWire>> Get(string part, IStore store, CancellationToken cancellation)
    {
        var found = await store.Find<Part>(part, cancellation) ?? throw Unknown();
        return new(PartWire.From(found, await store.Rates(cancellation)), Etags.Of(Etags.Part, found.Version));
    }

    private static async Task<ChangedAnswer<PartWire>> Change(
        string part, HttpContext http, Body<PartChangeRequest> body, FamilyBook families, IStore store, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Part);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Find<Part>(part) ?? throw Unknown();
            var (rates, complaints) = (session.Rates(), new Complaints());
            if (expected is { } seen && seen != now.Version)
                throw Conflict(PartWire.From(now, rates), now.Version, seen);
            var changed = new PartIntake(families, rates).Change(now, body, complaints);
            complaints.ThrowIfAny(Problems.InvalidContent);
            var put = session.Put(changed, expected);
            return Answer.Changed(PartWire.From(put, rates), Etags.Of(Etags.Part, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static ProblemException Conflict(PartWire now, long version, long seen) => new(Problems.VersionConflict, $"The part is at version {version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = version, ["yourVersion"] = seen, ["current"] = now }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Part, version)),
    };

    private static ProblemException Unknown() => new(Problems.UnknownPartId, "The price list has no part of this id.");
}
