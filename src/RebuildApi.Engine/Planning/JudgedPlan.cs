using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>A complete plan judged as the unit would be judged.</summary>
/// <param name="Snapshot">The unit as it would be.</param>
/// <param name="Parts">The verdict on each part.</param>
/// <param name="Clearances">The verdict on each clearance.</param>
/// <param name="Pairings">The verdict on each pairing.</param>
/// <param name="Faults">What does not stand.</param>
internal sealed record JudgedPlan(
    UnitSnapshot Snapshot, ImmutableArray<PartAnswer> Parts, ImmutableArray<ClearanceAnswer> Clearances, ImmutableArray<PairingVerdict> Pairings, ImmutableArray<PlanFault> Faults)
{
    public static JudgedPlan Of(PlanModel model, ImmutableArray<int> picks)
    {
        var family = model.Book.View.Family;
        var snapshot = model.SnapshotOf(picks);
        var book = new EstimateBook(new UnitView(snapshot, family));
        var clearances = family.Family.Loops.Select(l => ClearanceJudge.Judge(l, book)).ToImmutableArray();
        var pairings = family.Family.Pairings.Select(r => PairingJudge.JudgeWithoutCures(r, book))
            .Concat(family.Family.Hooks.SelectMany(h => model.Hooks.Run(h, snapshot))).ToImmutableArray();
        return new JudgedPlan(snapshot, PartJudge.JudgeAll(book), clearances, pairings,
            [.. family.Family.Loops.Zip(clearances).Where(x => Fails(x.Second)).Select(x => FaultOf(x.First, model)), .. FaultsOf(pairings, model)]);
    }

    /// <summary>Whether something in a clearance stands on a drawing or is not known, so that the piece is chosen again when it is read.</summary>
    public static bool IsToBeRead(ClearanceAnswer clearance) =>
        clearance.Alarm is not null || clearance.Terms.Any(t => t.IsUnknown || (t.Estimate.Basis == EstimateBasis.Drawing && t.Term.Of is OfPart));

    private static bool Fails(ClearanceAnswer clearance) => clearance.Verdict.Outcome switch
    {
        Outcome.Conforming => false,
        Outcome.Nonconforming => true,
        _ => !IsToBeRead(clearance),
    };

    private static PlanFault FaultOf(ClearanceLoop loop, PlanModel model)
    {
        var positions = loop.Terms.Select(t => t.Of).Select(d => d is OfSeries s ? s.Position : (d as OfPart)?.At.Position).ToHashSet();
        return new PlanFault(model.Demands.Clearance(loop.Id, loop.Name.In("en")), PlacesOf(model, p => p.Index == 1 && positions.Contains(p.Position.Id)));
    }

    private static IEnumerable<PlanFault> FaultsOf(ImmutableArray<PairingVerdict> pairings, PlanModel model)
    {
        var family = model.Book.View.Family.Family;
        foreach (var verdict in pairings.Where(v => v.Outcome == Compatibility.Incompatible))
        {
            if (family.Pairings.FirstOrDefault(r => r.Id == verdict.Rule) is { } rule)
                yield return new PlanFault(model.Demands.Pairing(rule.Id, rule.Name.In("en")), PlacesOf(model, p => rule.Touches(p.Position.Id, family)));
            else if (family.Hooks.FirstOrDefault(h => verdict.Rule == h.Id || verdict.Rule.StartsWith(h.Id + "/", StringComparison.Ordinal)) is { } hook)
                yield return new PlanFault(model.Demands.Pairing(hook.Id, hook.Id), PlacesOf(model, p => hook.Positions.Contains(p.Position.Id)));
        }
    }

    private static ImmutableArray<int> PlacesOf(PlanModel model, Func<PlanPlace, bool> isIn) =>
        [.. Enumerable.Range(0, model.Places.Length).Where(i => isIn(model.Places[i]))];
}
