using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>The way of a unit from intake to hand-over, gate by gate.</summary>
public static class StageEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapStages(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("units");
        group.Read("/units/{unit}/stages", Get, "getStages", "Where is the unit, and what does its next gate ask for?",
                "The way so far, who let it through each gate and when, what was left out, and each requirement of the next gate: met or not, and what to do about it.")
            .Fails(Problems.UnknownUnit);
        group.Make("/units/{unit}/stages", Go, "passStage", "Pass a gate, go back, or give up",
                "Lets a unit through its next gate when everything that the gate asks for is there; back to an earlier stage or away unrepaired with a reason. The judgement that stood is kept with it.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.GateNotMet, Problems.StageConflict, Problems.RulesUnavailable, Problems.VersionConflict)
            .Example("""
                { "to": "pre-strip", "person": "Ada", "note": "Came in a box.", "notAvailable": [{ "requirement": "complaint", "reason": "Bought as a core." }] }
                """);
        group.Make("/units/{unit}/sign-offs", Sign, "addSignOff", "Sign for a check of the whole gearbox",
                "Records who tried the interlock, the function or a check that the family asks for, and what came of it. It counts for what is fitted now: once anything is changed, it is to be tried again.")
            .Fails(Problems.UnknownUnit, Problems.InvalidContent, Problems.DuplicateId, Problems.RulesUnavailable)
            .Example("""{ "check": "interlock", "passed": true, "person": "Ada", "bench": "bench-1" }""");
        group.List<ListOf<SignOffWire>>("/units/{unit}/sign-offs", SignOffs, "listSignOffs", "List what was signed for", "Every sign-off of a unit. Never edited; of several of one check the newest counts.")
            .Fails(Problems.UnknownUnit);
    }

    private static async Task<Found<StagesWire>> Get(string unit, StageSheet sheet, CancellationToken cancellation) => new(await sheet.Of(unit, cancellation));

    private static async Task<CreatedAnswer<PassingWire>> Go(string unit, Body<StageRequest> body, StageDesk desk, CancellationToken cancellation) =>
        new(await desk.Go(unit, body, cancellation), body.Request.DryRun);

    private static async Task<CreatedAnswer<SignOffWire>> Sign(string unit, Body<SignOffRequest> body, Bench bench, FamilyBook families, CancellationToken cancellation)
    {
        var sent = body.Value;
        var answer = await bench.Store.Write(body.Request, session =>
        {
            var file = session.File(unit) ?? throw Bench.Unknown();
            if (!SignedChecks.All.Contains(sent.Check))
                RequireCheck(sent.Check, families.RequirePinned(file.Unit.Family));
            var signed = session.Put(
                new SignOff(sent.Id ?? bench.Ids.Next(), unit, sent.Check, sent.Passed, sent.Person, sent.Bench, bench.Time.GetUtcNow(), sent.Note, Build.Sha256(file)), null);
            return Answer.Created($"/v1/units/{unit}/sign-offs", SignOffWire.From(signed));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static void RequireCheck(string check, FamilyIndex family)
    {
        if (FamilyGates.Checks(family) is var known && known.Contains(check))
            return;
        const string Words = "Nobody signs for that at this unit.";
        throw new ProblemException(Problems.InvalidContent, Words, [new FieldError("/check", FieldProblems.NotAllowed.Code, Words, check, known)]);
    }

    private static async Task<Listing<SignOffWire, ListOf<SignOffWire>>> SignOffs(string unit, Bench bench, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        PageReader<SignOff> pages = (after, limit, stop) => bench.Store.Page<SignOff>(new ShopFilter(unit), after, limit, stop);
        return new(pages.Select(SignOffWire.From), (items, next, asOf) => new(items, next, asOf));
    }
}
