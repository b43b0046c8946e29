using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>What a rebuild will cost, and what the customer agreed to.</summary>
public static class QuoteEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapQuotes(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.Read("/units/{unit}/quote", Get, "getQuote", "What will it cost?",
                "The newest quote with its lines, tax on each line, what is required, recommended and optional, the range where something is unsure, and whether the customer has agreed.")
            .Fails(Problems.UnknownUnit, Problems.UnknownQuote);
        group.Make("/units/{unit}/quote", Make, "makeQuote", "Make a quote",
                "Prices a plan: the one named, else the one chosen, else the newest. Each quote has the next number; earlier ones stay. What is out to be machined at a price is quoted with it.")
            .Needs(Scope.Office).Fails(Problems.UnknownUnit, Problems.UnknownPlan, Problems.InvalidContent)
            .Example("""
                { "person": "Ada", "extras": [{ "id": "oil", "text": "Gear oil, 2 litres", "price": { "minor": 2400, "currency": "XXX" } },
                  { "id": "paint", "text": "Paint the case", "price": { "minor": 6000, "currency": "XXX" }, "sort": "labour", "quantity": 45, "need": "optional" }] }
                """);
        group.List<ListOf<ApprovalWire>>("/units/{unit}/quote/approvals", Approvals, "listApprovals", "List what the customer agreed to", "Who agreed, when, to which sum of which quote. Never edited.")
            .Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/quote/approvals", Approve, "approveQuote", "Take an approval down",
                "The customer agrees to the required lines of the newest quote, and to those of the others that are named. The sum and the share by which the work may grow are kept with it.")
            .Needs(Scope.Office).Fails(Problems.UnknownUnit, Problems.UnknownQuote, Problems.QuoteOvertaken, Problems.InvalidContent)
            .Example("""{ "number": 1, "by": "Ferry Lane Farm, by telephone", "person": "Ada", "lines": ["paint"] }""");
    }

    private static async Task<Found<QuoteWire>> Get(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var standing = await Standing.Of(store, unit, cancellation) ?? throw QuoteDesk.UnknownQuote();
        return new(QuoteShown.Of(standing));
    }

    private static async Task<CreatedAnswer<QuoteWire>> Make(string unit, Body<QuoteRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            new QuoteDesk(session, bench.Ids, bench.Time.GetUtcNow()).Make(unit, body.Value);
            return Answer.Created($"/v1/units/{unit}/quote", QuoteShown.Of(Standing.Of(session, unit)!));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static async Task<Listing<ApprovalWire, ListOf<ApprovalWire>>> Approvals(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var rates = await store.Rates(cancellation);
        PageReader<Approval> pages = (after, limit, stop) => store.Page<Approval>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(a => ApprovalWire.From(a, rates)), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<CreatedAnswer<ApprovalWire>> Approve(string unit, Body<ApprovalRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            var approval = new QuoteDesk(session, bench.Ids, bench.Time.GetUtcNow()).Approve(unit, body.Value);
            return Answer.Created($"/v1/units/{unit}/quote/approvals", ApprovalWire.From(approval, session.Rates()));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }
}
