using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Endpoints;

/// <summary>What a person chose against or within a verdict, and why.</summary>
public static class DecisionEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapDecisions(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("decisions");
        group.Make("/units/{unit}/decisions", Decide, "addDecision", "Record a decision",
                "Records what a person chose, why, and who signs, with the judgement that stood. The verdict stays what it is: an overridden verdict is never shown as conforming.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable, Problems.VersionConflict)
            .Example("""{ "subject": "third-gear", "choice": "replace", "reason": "New one is on the shelf.", "person": "Ada", "bench": "bench-1" }""");
        group.List<ListOf<DecisionWire>>("/units/{unit}/decisions", List, "listDecisions", "List the decisions of a unit", "What stands; what was superseded is left out.").Tagged()
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<CreatedAnswer<DecisionWire>> Decide(string unit, Body<DecisionRequest> body, DecisionDesk desk, CancellationToken cancellation) =>
        new(await desk.Decide(unit, body, cancellation), body.Request.DryRun);

    private static async Task<Listing<DecisionWire, ListOf<DecisionWire>>> List(string unit, Bench bench, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        return new(
            PagesOf.Whole([.. file.Decisions.Select(DecisionWire.From)], d => d.Id), (items, next, asOf) => new(items, next, asOf), Etags.Of(Etags.Unit, file.Unit.Version));
    }
}
