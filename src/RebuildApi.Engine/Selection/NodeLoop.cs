namespace RebuildApi.Engine.Selection;

/// <summary>One clearance of a node: what is fixed is added up, what only it feels is listed as sums, what it shares is its scope.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Fixed">Its gap before anything that is still open.</param>
/// <param name="Scope">Indices of the shared choices that enter it, ascending.</param>
/// <param name="Coefficients">Their coefficients.</param>
/// <param name="Own">The sums of the choices that only it feels.</param>
internal sealed record NodeLoop(CompiledLoop Loop, long Fixed, int[] Scope, long[] Coefficients, PrivateSums Own)
{
    public static NodeLoop Of(CompiledLoop loop, CompiledOption[][] options, int[][] allowed, int[] shared)
    {
        var terms = loop.Choices.Zip(loop.Coefficients).ToArray();
        var scope = terms.Where(t => shared.Contains(t.First)).Select(t => (Variable: Array.IndexOf(shared, t.First), t.Second)).OrderBy(t => t.Variable).ToArray();
        var rest = terms.Where(t => !shared.Contains(t.First)).ToArray();
        var gap = loop.Without + rest.Where(t => allowed[t.First].Length == 1).Sum(t => t.Second * options[t.First][allowed[t.First][0]].Amount);
        var own = PrivateSums.Of([.. rest.Where(t => allowed[t.First].Length > 1)], options, allowed);
        return new NodeLoop(loop, gap, [.. scope.Select(s => s.Variable)], [.. scope.Select(s => s.Second)], own);
    }

    /// <summary>The largest margin for each combination of the shared choices.</summary>
    public Factor<long> Margins(long[][] amounts) => new(Scope, Fill(amounts, rest => Own.BestMargin(Loop, rest)));

    /// <summary>The least burden for each combination, with the margin held.</summary>
    public Factor<Int128> LeastBurdens(long[][] amounts, long margin, Burdens burdens)
    {
        var gaps = Loop.GapsOfMargin(margin);
        return new Factor<Int128>(Scope, Fill(amounts, rest => Own.LeastBurden(Loop, rest, gaps, burdens).Burden));
    }

    /// <summary>Writes the best options of what only this clearance feels.</summary>
    public void Write(long shared, long margin, Burdens burdens, int[] picks) =>
        Own.Write(Own.LeastBurden(Loop, Fixed + shared, Loop.GapsOfMargin(margin), burdens).Sum, picks);

    private T[] Fill<T>(long[][] amounts, Func<long, T> valueOf)
    {
        var gaps = new[] { Fixed };
        foreach (var values in amounts)
            gaps = [.. gaps.SelectMany(g => values.Select(v => g + v))];
        return Array.ConvertAll(gaps, g => valueOf(g));
    }
}
