using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>A complete plan judged as the unit would be judged, for its answer.</summary>
/// <param name="Snapshot">The unit as it would be.</param>
/// <param name="Parts">The verdict on each part.</param>
/// <param name="Clearances">The verdict on each clearance.</param>
/// <param name="Pairings">The verdict on each pairing.</param>
internal sealed record JudgedPlan(UnitSnapshot Snapshot, ImmutableArray<PartAnswer> Parts, ImmutableArray<ClearanceAnswer> Clearances, ImmutableArray<PairingVerdict> Pairings)
{
    public static JudgedPlan Of(PlanModel model, ImmutableArray<int> picks)
    {
        var family = model.Book.View.Family;
        var snapshot = model.SnapshotOf(picks);
        var book = new EstimateBook(new UnitView(snapshot, family));
        return new JudgedPlan(
            snapshot,
            PartJudge.JudgeAll(book),
            [.. family.Family.Loops.Select(l => ClearanceJudge.JudgeGap(l, book))],
            [.. family.Family.Pairings.Select(r => PairingJudge.JudgeWithoutCures(r, book)), .. family.Family.Hooks.SelectMany(h => model.Hooks.Run(h, snapshot))]);
    }
}
