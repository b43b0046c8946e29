using RebuildApi.Engine.Selection;

namespace RebuildApi.Benchmarks;

/// <summary>The obvious way: try every complete choice, keep the best rank. Written tightly, so that the comparison is fair.</summary>
internal static class PlainEnumeration
{
    public static (long Margin, long Distance) Best(SelectionProblem problem)
    {
        var amounts = problem.Choices.Select(c => c.Options.Select(o => o.Amount.Nanometres).ToArray()).ToArray();
        var index = problem.Choices.Select((c, i) => (c.Id, i)).ToDictionary(x => x.Id, x => x.i);
        var loops = problem.Loops.Select(l => new Plain(
            l.Without.Nanometres, l.GuardedLow!.Value.Nanometres, l.GuardedHigh!.Value.Nanometres, l.Target.Nanometres, (long)Math.Round(l.StandardUncertainty * 1e9),
            [.. l.Terms.Select(t => index[t.Choice])])).ToArray();
        var picks = new int[amounts.Length];
        var best = (Margin: long.MinValue, Distance: long.MaxValue);
        do
        {
            var rank = Rank(loops, amounts, picks);
            if (rank.Margin > best.Margin || (rank.Margin == best.Margin && rank.Distance < best.Distance))
                best = rank;
        }
        while (Advance(picks, amounts));
        return best;
    }

    private static (long Margin, long Distance) Rank(Plain[] loops, long[][] amounts, int[] picks)
    {
        var (margin, distance) = (long.MaxValue, 0L);
        foreach (var loop in loops)
        {
            var gap = loop.Without;
            foreach (var choice in loop.Choices)
                gap -= amounts[choice][picks[choice]];
            margin = Math.Min(margin, Floor(100 * Math.Min(gap - loop.Low, loop.High - gap), loop.Uncertainty));
            distance += Math.Abs(gap - loop.Target);
        }

        return (margin, distance);
    }

    private static long Floor(long a, long b) => a >= 0 ? a / b : -((-a + b - 1) / b);

    private static bool Advance(int[] picks, long[][] amounts)
    {
        for (var i = 0; i < picks.Length; i++)
        {
            if (++picks[i] < amounts[i].Length)
                return true;
            picks[i] = 0;
        }

        return false;
    }

    private sealed record Plain(long Without, long Low, long High, long Target, long Uncertainty, int[] Choices);
}
