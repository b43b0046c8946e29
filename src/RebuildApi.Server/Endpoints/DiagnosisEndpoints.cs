using System.Collections.Immutable;
using RebuildApi.Engine.Diagnosis;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Diagnosis;

namespace RebuildApi.Server.Endpoints;

/// <summary>What may lie behind a complaint, and what to look at next.</summary>
public static class DiagnosisEndpoints
{
    private static readonly QueryOption Checks = new("checks", "How many next checks are wanted; 10 when not said, 500 at most.", "integer");

    /// <summary>The routes.</summary>
    public static void MapDiagnosis(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("diagnosis");
        group.WorkOut("/families/{family}/diagnoses", Diagnose, "diagnose", "What may lie behind a complaint?",
                "Ranks the family's causes by what is said of a gearbox, with the range of each probability and what speaks for and against; names the check that tells most for its minutes. Nothing is stored.")
            .Fails(Problems.UnknownFamily, Problems.InvalidContent, Problems.NotComputable)
            .Example("""
                { "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third", "load": "drive" }], "tests": [{ "test": "linkage-off", "shown": false }],
                  "findings": [{ "position": "third-gear", "attribute": { "id": "dog.drive-flank", "value": "leaned" } }],
                  "costs": [{ "cause": "third-flanks-leaned", "repair": 18000, "missed": 65000 }] }
                """);
        group.Read("/units/{unit}/diagnosis", OfUnit, "getDiagnosis", "What lies behind the unit's complaint, and what to look at next?",
                "From the complaint, the tests that were tried, what was seen and what the verdicts say. Before strip-down the next check is a test; afterwards a look or a reading.")
            .InUnits().WithMetadata(Checks).Fails(Problems.UnknownUnit, Problems.RulesUnavailable, Problems.NotComputable);
    }

    private static async Task<Found<DiagnosisWire>> Diagnose(
        string family, Body<DiagnosisRequest> body, Asked asked, FamilyBook families, DiagnosisDesk desk, CancellationToken cancellation)
    {
        var (sent, index, complaints) = (body.Value, families.Require(family), new Complaints());
        var view = new SaidGearbox(index, complaints).Of(sent);
        foreach (var (cost, i) in (sent.Costs ?? []).Select((c, i) => (c, i)))
            SaidGearbox.CheckCause(cost.Cause, Pointer.Entry("/costs", i) + "/cause", index, complaints);
        complaints.ThrowIfAny(Problems.InvalidContent);
        return new(await desk.Diagnose(view, SaidGearbox.StandingsOf(sent), seen => QuestionOf(sent, seen), asked.Show, cancellation));
    }

    private static async Task<Found<DiagnosisWire>> OfUnit(string unit, HttpContext http, Asked asked, Bench bench, DiagnosisDesk desk, CancellationToken cancellation)
    {
        var checks = QueryText.Count(http, Checks.Name, 10, 500);
        return new(await desk.Diagnose(await bench.File(unit, cancellation), checks, asked.Show, cancellation));
    }

    private static DiagnosisQuestion QuestionOf(DiagnosisRequest sent, ImmutableArray<ClueSeen> seen) => new(seen)
    {
        From = sent.Apart ? Contracts.TestStage.Teardown : Contracts.TestStage.BeforeStripDown,
        Costs = (sent.Costs ?? []).DistinctBy(c => c.Cause).ToImmutableDictionary(c => c.Cause, c => new CauseCost(c.Repair, c.Missed)),
        PlanSavings = (sent.Savings ?? []).DistinctBy(s => s.Look).ToImmutableDictionary(s => s.Look, s => (double)s.Saving),
        Checks = sent.Checks,
    };
}
