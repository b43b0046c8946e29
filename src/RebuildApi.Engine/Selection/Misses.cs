using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;

namespace RebuildApi.Engine.Selection;

/// <summary>Says of a clearance that can't be brought right what it misses by when it is served alone, and what may be machined.</summary>
internal static class Misses
{
    /// <summary>The miss of one clearance; none when the best choice brings it right.</summary>
    public static LoopMiss? Of(SelectionLoop loop, ClearanceLoop of, SelectionGap joint, SelectionProblem problem, EstimateBook book)
    {
        if (joint.Margin >= 0)
            return null;
        var own = problem.Choices.Where(c => loop.Terms.Any(t => t.Choice == c.Id));
        var alone = SelectionSolver.Solve(new SelectionProblem([loop], [.. own])).Best!;
        var gap = alone.Gaps[0].Gap;
        var miss = new RingMiss([.. alone.Picks.SelectMany(p => p.Option.Members)], ToEnter(loop, gap), loop.Target - gap, false);
        var cuts = alone.Rank.Margin >= 0 ? [] : CutAdviser.For(of, miss, book, other => ClearanceJudge.GapOf(other, book));
        return new LoopMiss(loop.Id, gap, miss.ToEnter, miss.ToTarget, miss.Members, cuts);
    }

    private static Length ToEnter(SelectionLoop loop, Length gap)
    {
        if (loop.GuardedLow is { } low && gap < low)
            return low - gap;
        return loop.GuardedHigh is { } high && gap > high ? high - gap : Length.Zero;
    }
}
