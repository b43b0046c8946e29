namespace RebuildApi.Checkers;

/// <summary>
/// Looks for a better choice than one that is claimed to be the best, by a plain search of its own: choice after choice, passing over branches in
/// which no clearance interval can do as well. Knows nothing of the solver.
/// </summary>
public static class SelectionChecker
{
    /// <summary>Every complete choice's rank, best first. For small problems only.</summary>
    public static IReadOnlyList<CheckedRank> AllRanks(CheckedProblem problem)
    {
        IEnumerable<int[]> all = [[]];
        foreach (var choice in problem.Choices)
            all = all.SelectMany(a => Enumerable.Range(0, choice.Count).Select(o => (int[])[.. a, o]));
        return [.. all.Select(problem.RankOf).Order()];
    }

    /// <summary>A choice that ranks before the claimed one, or nothing: then the claim is proven.</summary>
    public static int[]? FindBetter(CheckedProblem problem, IReadOnlyList<int> claimed) =>
        Search(problem, problem.RankOf(claimed), new int[problem.Choices.Count], 0);

    private static int[]? Search(CheckedProblem problem, CheckedRank claim, int[] picks, int depth)
    {
        if (!MayBeat(problem, claim, picks, depth))
            return null;
        if (depth == picks.Length)
            return problem.RankOf(picks).CompareTo(claim) < 0 ? (int[])picks.Clone() : null;
        for (var option = 0; option < problem.Choices[depth].Count; option++)
        {
            picks[depth] = option;
            if (Search(problem, claim, picks, depth + 1) is { } better)
                return better;
        }

        return null;
    }

    /// <summary>Whether the first choices leave any room: every clearance must still reach the margin, and together the distance, unless the margin can grow.</summary>
    private static bool MayBeat(CheckedProblem problem, CheckedRank claim, int[] picks, int depth)
    {
        var (mayGrow, distance) = (true, Fraction.Of(0));
        foreach (var loop in problem.Loops)
        {
            var (low, high) = Reach(problem, loop, picks, depth);
            var best = loop.MarginOf(Nearest(Middle(loop, low, high), low, high));
            if (best < claim.Margin)
                return false;
            mayGrow &= best > claim.Margin;
            var target = Fraction.Of(loop.Target.Nanometres);
            distance += (Nearest(target, low, high) - target).Magnitude;
        }

        return mayGrow || distance.CompareTo(claim.Distance) <= 0;
    }

    private static (Fraction Low, Fraction High) Reach(CheckedProblem problem, CheckedLoop loop, int[] picks, int depth)
    {
        var (low, high) = (Fraction.Of(loop.Without.Nanometres), Fraction.Of(loop.Without.Nanometres));
        foreach (var (choice, coefficient) in loop.Terms)
        {
            var adds = choice < depth
                ? [coefficient * problem.Choices[choice][picks[choice]].Amount.Nanometres]
                : problem.Choices[choice].Select(o => coefficient * o.Amount.Nanometres).ToArray();
            (low, high) = (low + adds.Min(), high + adds.Max());
        }

        return (low, high);
    }

    /// <summary>The gap of the largest margin: the middle of the window, or the far end on an open side.</summary>
    private static Fraction Middle(CheckedLoop loop, Fraction low, Fraction high) => (loop.Low, loop.High) switch
    {
        ({ } l, { } h) => new Fraction(l.Nanometres + (System.Numerics.BigInteger)h.Nanometres, 2),
        (null, _) => low,
        _ => high,
    };

    private static Fraction Nearest(Fraction to, Fraction low, Fraction high) =>
        to.CompareTo(low) < 0 ? low : to.CompareTo(high) > 0 ? high : to;
}
