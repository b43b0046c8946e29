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

/// <summary>What lies on the shop's shelf.</summary>
public static class StockEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapStock(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("shop");
        group.List<ListOf<StockWire>>("/stock", List, "listStock", "List the shelf",
                "New parts and pieces by count, measured used parts, parts of cores; each with how many are kept for units. The table can be changed and taken over again.")
            .Takes(PartEndpoints.Kind);
        group.Make("/stock", Add, "addStock", "Put something on the shelf", "What was read and seen of a used part goes with it, so that plans can judge it.")
            .Needs(Scope.Office).Fails(Problems.InvalidContent, Problems.DuplicateId)
            .Example("""
                { "id": "shelf-17", "family": "brackenmere-4", "kind": "third-gear", "count": 1, "price": { "minor": 4500, "currency": "XXX" }, "person": "Ada", "origin": "core",
                  "inspected": true, "attributes": { "dog.form": "straight" }, "readings": [{ "characteristic": "length", "readings": [{ "value": 1.5001, "unit": "in" }] }] }
                """);
        group.Make("/stock/imports", Import, "importStock", "Take a stock list over",
                "From JSON, or from CSV with the columns that the list shows. New ids are added, known ones changed; nothing is taken away. Each fault names its row and column.")
            .Needs(Scope.Office).WithMetadata(BadRows.Option, new BodyLimit(16 << 20))
            .Fails(Problems.InvalidContent, Problems.MalformedCsv)
            .Example("""
                { "rows": [{ "id": "ring-093", "family": "brackenmere-4", "kind": "snap-ring-3-4", "member": "093", "origin": "new", "count": 8,
                  "price": { "minor": 650, "currency": "XXX" }, "person": "Ada" }] }
                """);
        group.Read("/stock/{stock}", Get, "getStock", "Get something on the shelf", "One item; its ETag is what a change must name.").InUnits().Fails(Problems.UnknownStockId);
        group.Change("/stock/{stock}", Change, "changeStock", "Change something on the shelf", "Changes the fields that are sent: counts it anew, say.")
            .Needs(Scope.Office).Fails(Problems.UnknownStockId, Problems.InvalidContent)
            .Example("""{ "count": 7 }""");
    }

    private static async Task<Listing<StockWire, ListOf<StockWire>>> List(HttpContext http, Asked asked, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var (rates, wanted) = (await store.Rates(cancellation), new ShopFilter(About: QueryText.Of(http, PartEndpoints.Kind.Name)));
        var reserved = Reserved.Of(await store.All<Reservation>(ShopFilter.Every, cancellation), time.GetUtcNow());
        PageReader<StockItem> pages = (after, limit, stop) => store.Page<StockItem>(wanted, after, limit, stop);
        return new(pages.Select(s => StockWire.From(s, reserved.Count(s.Id), rates, asked.Show)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<StockWire>> Add(
        Body<StockRequest> body, Asked asked, FamilyBook families, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var (rates, complaints) = (session.Rates(), new Complaints());
            var item = new StockIntake(families, session, rates, time.GetUtcNow()).Take(body.Value, p => p, complaints);
            complaints.ThrowIfAny(Problems.InvalidContent);
            if (session.Find<StockItem>(item.Id) is not null)
                throw new DuplicateIdException("stock", item.Id);
            var put = session.Put(item, null);
            return Answer.Created("/v1/stock/" + put.Id, StockWire.From(put, 0, rates, asked.Show), Etags.Of(Etags.Stock, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<ChangedAnswer<ImportWire>> Import(
        ListBody<StockListRequest, StockRequest> body, FamilyBook families, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            var intake = new StockIntake(families, session, session.Rates(), time.GetUtcNow());
            var takeover = new Takeover<StockRequest, StockItem>(session, intake.Take, r => r.Version, s => s with { Version = 0, Time = default });
            return Answer.Changed(takeover.Of(body.Rows, body.SkipsBad));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Found<StockWire>> Get(string stock, HttpContext http, Asked asked, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var found = await store.Find<StockItem>(stock, cancellation) ?? throw Unknown();
        var reserved = Reserved.Of(await store.All<Reservation>(new ShopFilter(About: stock), cancellation), time.GetUtcNow());
        // Only told: reservations come and go at the same version, so "as you have it" would be wrong.
        http.Response.Headers.ETag = Etags.Of(Etags.Stock, found.Version);
        return new(StockWire.From(found, reserved.Count(stock), await store.Rates(cancellation), asked.Show));
    }

    private static async Task<ChangedAnswer<StockWire>> Change(
        string stock, HttpContext http, Body<StockChangeRequest> body, Asked asked, FamilyBook families, IStore store, TimeProvider time, CancellationToken cancellation)
    {
        var expected = Writes.ExpectedVersion(http, Etags.Stock);
        var answer = await store.Write(body.Request, session =>
        {
            var now = session.Find<StockItem>(stock) ?? throw Unknown();
            var (rates, complaints) = (session.Rates(), new Complaints());
            var reserved = Reserved.Of(session.All<Reservation>(about: stock), time.GetUtcNow()).Count(stock);
            if (expected is { } seen && seen != now.Version)
                throw Conflict(StockWire.From(now, reserved, rates, asked.Show), now.Version, seen);
            var changed = new StockIntake(families, session, rates, time.GetUtcNow()).Change(now, body, complaints);
            complaints.ThrowIfAny(Problems.InvalidContent);
            var put = session.Put(changed, expected);
            return Answer.Changed(StockWire.From(put, reserved, rates, asked.Show), Etags.Of(Etags.Stock, put.Version));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static ProblemException Conflict(StockWire now, long version, long seen) => new(Problems.VersionConflict, $"The item is at version {version}, not {seen}.")
    {
        Extras = new Dictionary<string, object> { ["currentVersion"] = version, ["yourVersion"] = seen, ["current"] = now }.ToExtras(),
        Headers = ImmutableSortedDictionary<string, string>.Empty.Add("ETag", Etags.Of(Etags.Stock, version)),
    };

    private static ProblemException Unknown() => new(Problems.UnknownStockId, "Nothing of this id is on the shelf.");
}
