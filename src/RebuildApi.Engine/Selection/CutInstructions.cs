using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Selection;

/// <summary>Writes the instruction for a cut out of a solved selection.</summary>
internal static class CutInstructions
{
    private const int Sample = 1000;

    public static CutInstruction For(Cut cut, CutLimit limit, Length removed, SelectionSolution solution, SelectionProblem problem, EstimateBook book)
    {
        var steps = (int)(removed.Nanometres / cut.Main.Step.Nanometres);
        var at = new Address(cut.Position, cut.Main.At.Characteristic);
        var before = book.Of(at) is { Basis: not EstimateBasis.Drawing, Value: Exact value } ? value.Value : (Length?)null;
        var change = steps * Cut.PerStep(cut.Main);
        var touched = Touched(cut, solution, problem, book);
        return new CutInstruction(
            cut.Operation.Id, at, cut.Main.Datum, change,
            touched.Select(t => Room(t, +1, cut.Main.Step)).Append((limit.MostSteps!.Value - steps) * cut.Main.Step).Min(),
            touched.Select(t => Room(t, -1, cut.Main.Step)).Append(removed).Min(),
            before, before + change,
            [.. touched.Select(t => t.Gap)],
            cut.Operation.RemeasureGate, cut.Operation.Cautions,
            [
                Because.Of("cut-instruction", cut.Id, ("at", at), ("datum", cut.Main.Datum), ("removedNm", removed)),
                limit.Because,
                Because.Of("cut-is-a-proposal", cut.Id),
            ]);
    }

    private static ImmutableArray<(SelectionGap Gap, SelectionLoop Loop, Length Change)> Touched(
        Cut cut, SelectionSolution solution, SelectionProblem problem, EstimateBook book) =>
    [
        .. solution.Gaps.Zip(problem.Loops)
            .Select(x => (x.First, x.Second, cut.ChangeOf(book.View.Family.Loops[x.Second.Id], Sample, book.View.Family)))
            .Where(x => x.Item3 != Length.Zero),
    ];

    /// <summary>How much more (+1) or less (−1) may come off before this gap leaves its guarded window.</summary>
    private static Length Room((SelectionGap Gap, SelectionLoop Loop, Length Change) touched, int direction, Length step)
    {
        var grows = Math.Sign(touched.Change.Nanometres) * direction > 0;
        var slack = grows ? touched.Loop.GuardedHigh - touched.Gap.Gap : touched.Gap.Gap - touched.Loop.GuardedLow;
        return slack is { } room
            ? new Length((long)decimal.Floor((decimal)room.Nanometres * step.Nanometres * Sample / Math.Abs(touched.Change.Nanometres)))
            : new Length(long.MaxValue);
    }
}
