using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Units that came back, and what that was laid to.</summary>
public static class ComebackEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapComebacks(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("units");
        group.Make("/units/{unit}/comebacks", Add, "addComeback", "Record that a unit came back",
                "What was wrong, and what it was laid to, with the readings, trial assemblies, instruments and editions of the rules that the unit went out on. Rates and proposals are counted from these.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable)
            .Example("""
                { "person": "Ada", "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third" }], "words": "Jumps out of third again.",
                  "confirmed": [{ "subject": "third-gear/bore", "words": "Bore at its limit." }] }
                """);
        group.List<ListOf<ComebackWire>>("/units/{unit}/comebacks", OfUnit, "listComebacksOfUnit", "List the comebacks of a unit", "What stands; what was superseded is left out.")
            .Fails(Problems.UnknownUnit);
        routes.Resource("statistics").List<ListOf<ComebackWire>>("/statistics/comebacks", All, "listComebacks", "List all comebacks", "What stands, over all units, in the order of their ids.");
    }

    private static async Task<CreatedAnswer<ComebackWire>> Add(string unit, Body<ComebackRequest> body, ComebackDesk desk, CancellationToken cancellation) =>
        new(await desk.Keep(unit, body, cancellation), body.Request.DryRun);

    private static async Task<Listing<ComebackWire, ListOf<ComebackWire>>> OfUnit(string unit, IStore store, CancellationToken cancellation)
    {
        _ = await store.Unit(unit, cancellation) ?? throw Bench.Unknown();
        return Shown((after, limit, cancel) => store.Comebacks(unit, after, limit, cancel));
    }

    private static Listing<ComebackWire, ListOf<ComebackWire>> All(IStore store) => Shown((after, limit, cancel) => store.Comebacks(null, after, limit, cancel));

    private static Listing<ComebackWire, ListOf<ComebackWire>> Shown(PageReader<Comeback> pages) =>
        new(pages.Select(ComebackWire.From), (items, next, asOf) => new(items, next, asOf));
}
