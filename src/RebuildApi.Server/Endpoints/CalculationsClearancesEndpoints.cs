using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Fits;
using RebuildApi.Engine.Selection;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Endpoints;

/// <summary>Calculations about clearances and fits. Nothing is stored.</summary>
public static class CalculationsClearancesEndpoints
{
    /// <summary>The routes.</summary>
    public static void MapClearanceCalculations(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("calculations");
        group.WorkOut("/calculations/loop", Loop, "calculateLoop", "Sum a clearance from its members",
                "The gap, its worst case, its statistical spread and its uncertainty; what each member adds; the chance of lying in the window.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "terms": [{ "name": "shaft length", "length": { "value": 1.215, "unit": "in" }, "halfWidth": { "value": 0.002, "unit": "in" } },
                    { "name": "gear length", "length": { "value": 1.200, "unit": "in" }, "numerator": -1, "standardUncertainty": { "value": 0.0002, "unit": "in" } }],
                  "window": { "low": { "value": 0.010, "unit": "in" }, "high": { "value": 0.020, "unit": "in" } } }
                """);
        group.WorkOut("/calculations/thermal", Thermal, "calculateThermal", "A clearance cold and hot",
                "The gap at other temperatures than 20 °C, for members of different materials, with the doubt about their expansion.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "members": [{ "name": "case", "length": { "value": 210.00, "unit": "mm" }, "material": "aluminium" },
                    { "name": "shaft", "length": { "value": 209.90, "unit": "mm" }, "material": "steel", "numerator": -1 }],
                  "materials": [{ "id": "aluminium", "perMillionKelvin": 21.5, "halfWidth": 1 }, { "id": "steel", "perMillionKelvin": 11.5, "halfWidth": 0.5 }],
                  "at": [{ "temperature": { "value": -20, "unit": "°C" } }, { "temperature": { "value": 90, "unit": "°C" } }] }
                """);
        group.WorkOut("/calculations/selection", Selection, "calculateSelection", "Choose rings, shims and cuts together",
                "The proven best choice for all clearances at once, and the next best: pieces that exist or are on the shelf, packs of several, cuts in steps.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "loops": [{ "id": "end-play", "without": { "value": 0.105, "unit": "in" }, "terms": [{ "choice": "ring" }],
                    "window": { "low": { "value": 0.010, "unit": "in" }, "high": { "value": 0.020, "unit": "in" }, "target": { "value": 0.015, "unit": "in" } } }],
                  "choices": [{ "id": "ring", "members": [{ "id": "087", "thickness": { "value": 0.087, "unit": "in" } }, { "id": "090", "thickness": { "value": 0.090, "unit": "in" } }] }] }
                """);
        group.WorkOut("/calculations/fit", FitOf, "calculateFit", "A fit by classes or by measured sizes",
                "Limits of a hole and a shaft by their classes; a measured bore with a ring or journal in it at temperature, and whether the ring may creep.")
            .Fails(Problems.NotComputable)
            .Example("""{ "nominal": { "value": 30, "unit": "mm" }, "hole": "H7", "shaft": "k6" }""");
        group.WorkOut("/calculations/case-depth", CaseDepthOf, "calculateCaseDepth", "Depth of a hardened layer",
                "From a hardness traverse, where the hardness falls to the limit; what a cut would leave.")
            .Fails(Problems.NotComputable)
            .Example("""
                { "traverse": [{ "depth": { "value": 0.70, "unit": "mm" }, "vickers": 580 }, { "depth": { "value": 0.90, "unit": "mm" }, "vickers": 520 }],
                  "removed": { "value": 0.2, "unit": "mm" } }
                """);
    }

    private static Found<CalculationWire<LoopRequest, LoopWire>> Loop(Body<LoopRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var members = LoopIntake.Members(sent.Terms, complaints);
        var window = sent.Window?.ToContract("/window", complaints);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(sent, ClearanceFormulas.Loop, () =>
        {
            var loop = LoopValue.Sum(members);
            var judged = window is null ? null : Conformance.Assess("gap", loop.Estimate, window, Rule(sent.Rule, sent.Probability));
            return new Worked<LoopWire>(LoopWire.From(loop, judged, asked.Show), judged?.Reasons ?? []);
        }, "/terms"));
    }

    private static Found<CalculationWire<ThermalRequest, ThermalWire>> Thermal(Body<ThermalRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        var members = LoopIntake.Members(sent, complaints);
        var windows = sent.At.Select((p, i) => p.Window?.ToContract($"/at/{i}/window", complaints)).ToArray();
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(sent, ClearanceFormulas.Thermal, () =>
        {
            var gaps = new ThermalGaps(members, Rule(sent.Rule, sent.Probability), asked.Show);
            return new Worked<ThermalWire>(new ThermalWire(gaps.Gap, [.. sent.At.Select((p, i) => gaps.At(p.Temperature.Si, windows[i]))]));
        }, "/members"));
    }

    private static Found<CalculationWire<SelectionCalculationRequest, SelectionCalculationWire>> Selection(
        Body<SelectionCalculationRequest> body, Asked asked, CancellationToken cancellation)
    {
        var complaints = new Complaints();
        var problem = Refusal.At("/loops", new SelectionIntake(body.Value, complaints).Read);
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(
            body.Value, ClearanceFormulas.Selection,
            () => new Worked<SelectionCalculationWire>(SelectionCalculationWire.From(SelectionSolver.Solve(problem!, body.Value.Alternatives, cancellation), asked.Show)),
            "/choices"));
    }

    private static Found<CalculationWire<FitRequest, FitWire>> FitOf(Body<FitRequest> body, Asked asked)
    {
        var complaints = new Complaints();
        var fit = new FitIntake(body.Value, complaints);
        fit.Check();
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(body.Value, fit.Formula, () =>
        {
            var (classes, seat) = (fit.Classes(), fit.Seat());
            return new Worked<FitWire>(
                new FitWire(classes is null ? null : FitClassesWire.From(classes, asked.Show), seat is null ? null : SeatWire.From(seat, asked.Show)), seat?.Reasons ?? []);
        }, body.Value.RunningFit is null ? "/seat" : "/runningFit"));
    }

    private static Found<CalculationWire<CaseDepthRequest, CaseDepthWire>> CaseDepthOf(Body<CaseDepthRequest> body, Asked asked)
    {
        var sent = body.Value;
        var complaints = new Complaints();
        foreach (var (_, i) in sent.Traverse.Select((p, i) => (p, i)).Where(x => x.p.Vickers is null == x.p.RockwellC is null))
            complaints.Add(Pointer.Entry("/traverse", i), FieldProblems.Contradiction, "A point has exactly one of vickers and rockwellC.");
        complaints.ThrowIfAny(Problems.NotComputable);
        return new(Calculations.Run(sent, ClearanceFormulas.CaseDepth, () =>
        {
            var layer = CaseDepth.Of(
                [.. sent.Traverse.Select(p => new HardnessPoint(p.Depth.Length, (double?)p.Vickers ?? HardnessTable.VickersOf((double)p.RockwellC!.Value)))], sent.Limit);
            return new Worked<CaseDepthWire>(CaseDepthWire.From(layer, sent.Removed?.Length, asked.Show), layer.Reasons);
        }, "/traverse"));
    }

    private static Policy Rule(DecisionRule rule, decimal probability) => Policy.Default with { Decision = rule, Probability = (double)probability };
}
