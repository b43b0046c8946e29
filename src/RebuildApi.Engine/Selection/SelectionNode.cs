namespace RebuildApi.Engine.Selection;

/// <summary>
/// One problem with some options ruled out, solved exactly in two passes over tables of the choices that several clearances share: first the
/// largest smallest margin that can be had, then, with every clearance held to it, the least burden.
/// </summary>
internal sealed class SelectionNode
{
    private readonly CompiledProblem _problem;
    private readonly int[][] _allowed;
    private readonly int[] _shared;
    private readonly NodeLoop[] _loops;

    public SelectionNode(CompiledProblem problem, int[][] allowed)
    {
        _problem = problem;
        _allowed = allowed;
        _shared = [.. Enumerable.Range(0, allowed.Length).Where(c => allowed[c].Length > 1 && problem.Loops.Count(l => l.Choices.Contains(c)) > 1)];
        _loops = [.. problem.Loops.Select(l => NodeLoop.Of(l, problem.Options, allowed, _shared))];
    }

    /// <summary>The most work that one elimination, or the table of one loop, takes.</summary>
    public double Work => Math.Max(
        EliminationOrder.LargestWork(Sizes(_allowed), _loops.Select(l => l.Scope)),
        _loops.Max(l => l.Scope.Aggregate(1.0, (n, v) => n * _allowed[_shared[v]].Length)));

    /// <summary>The shared choice that the most clearances feel: fixing it takes the problem apart best.</summary>
    public int WidestChoice => _shared[_loops.SelectMany(l => l.Scope).GroupBy(v => v).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key];

    /// <summary>The best option of every choice.</summary>
    public int[] Solve()
    {
        var margins = _loops.Select(l => l.Margins(Amounts(l, _allowed))).ToArray();
        var best = Elimination.Solve<long, LargestSmallest>(Sizes(_allowed), margins);
        var margin = margins.Min(f => f.Table[IndexOf(f.Variables, best, _allowed)]);
        var kept = SupportedValues.Of(margins, Sizes(_allowed), margin);
        var allowed = Narrowed(kept);
        var burdens = new Burdens(_problem.Options);
        var sums = _loops.Select(l => l.LeastBurdens(Amounts(l, allowed), margin, burdens))
            .Concat(_shared.Select((c, v) => new Factor<Int128>([v], [.. allowed[c].Select(o => burdens.Of(_problem.Options[c][o].Side))])));
        return Complete(Elimination.Solve<Int128, LeastSum>(Sizes(allowed), sums), allowed, margin, burdens);
    }

    private int[] Sizes(int[][] allowed) => [.. _shared.Select(c => allowed[c].Length)];

    private int[][] Narrowed(int[][] kept)
    {
        var allowed = (int[][])_allowed.Clone();
        for (var v = 0; v < _shared.Length; v++)
            allowed[_shared[v]] = [.. kept[v].Select(i => _allowed[_shared[v]][i])];
        return allowed;
    }

    /// <summary>What each value of each shared choice of a loop adds to its gap.</summary>
    private long[][] Amounts(NodeLoop loop, int[][] allowed) =>
        [.. loop.Scope.Select((v, i) => allowed[_shared[v]].Select(o => loop.Coefficients[i] * _problem.Options[_shared[v]][o].Amount).ToArray())];

    private int IndexOf(int[] variables, int[] values, int[][] allowed) =>
        variables.Aggregate(0, (entry, v) => (entry * allowed[_shared[v]].Length) + values[v]);

    private int[] Complete(int[] values, int[][] allowed, long margin, Burdens burdens)
    {
        var picks = new int[_allowed.Length];
        for (var c = 0; c < picks.Length; c++)
            picks[c] = _allowed[c].MinBy(o => _problem.Options[c][o].Side);
        for (var v = 0; v < _shared.Length; v++)
            picks[_shared[v]] = allowed[_shared[v]][values[v]];
        foreach (var loop in _loops)
            loop.Write(loop.Scope.Select((v, i) => loop.Coefficients[i] * _problem.Options[_shared[v]][picks[_shared[v]]].Amount).Sum(), margin, burdens, picks);
        return picks;
    }
}
