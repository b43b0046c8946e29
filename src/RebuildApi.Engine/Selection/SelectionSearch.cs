namespace RebuildApi.Engine.Selection;

/// <summary>
/// Solves one problem exactly. Where clearances share so many choices that tables would grow too large, the widest choice is fixed to each of its
/// options in turn, and those that can't reach the margin already had are passed over (branch and bound); the rest fall apart into small tables.
/// </summary>
internal static class SelectionSearch
{
    /// <summary>Table entries that may be looked at in one step: some tens of milliseconds.</summary>
    private const double LargestTable = 4e6;

    /// <summary>The best complete choice out of what is allowed; none when some choice has no option left.</summary>
    public static SelectionSolution? Best(CompiledProblem problem, int[][] allowed, CancellationToken cancellation) =>
        allowed.Any(a => a.Length == 0) ? null : Solve(problem, allowed, null, cancellation);

    private static SelectionSolution? Solve(CompiledProblem problem, int[][] allowed, SelectionSolution? best, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        var node = new SelectionNode(problem, allowed);
        if (node.Work <= LargestTable)
            return Better(best, problem.Solution(node.Solve()));
        var choice = node.WidestChoice;
        foreach (var option in allowed[choice])
        {
            var narrower = (int[][])allowed.Clone();
            narrower[choice] = [option];
            if (best is null || MarginBound(problem, narrower) >= best.Rank.Margin)
                best = Solve(problem, narrower, best, cancellation);
        }

        return best;
    }

    private static SelectionSolution Better(SelectionSolution? a, SelectionSolution b) => a is not null && a.Rank.CompareTo(b.Rank) <= 0 ? a : b;

    /// <summary>A smallest margin that can't be exceeded: each clearance alone, as if every gap between its ends could be had.</summary>
    private static long MarginBound(CompiledProblem problem, int[][] allowed) => problem.Loops.Min(loop =>
    {
        var (low, high) = (loop.Without, loop.Without);
        foreach (var (choice, coefficient) in loop.Choices.Zip(loop.Coefficients))
        {
            var amounts = allowed[choice].Select(o => coefficient * problem.Options[choice][o].Amount).ToArray();
            (low, high) = (low + amounts.Min(), high + amounts.Max());
        }

        return loop.Margin(Math.Clamp(loop.Peak, low, high));
    });
}
