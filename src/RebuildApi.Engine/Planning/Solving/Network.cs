namespace RebuildApi.Engine.Planning.Solving;

/// <summary>A problem made ready for searching: costs of single options, tables over two choices merged, wider tables and sums beside them.</summary>
internal sealed class Network
{
    /// <summary>More than any sum of costs, and far from overflow.</summary>
    public const long Impossible = 1L << 60;

    /// <summary>Costs are counted in this many parts, so that halves can be moved about while bounds are worked out.</summary>
    private const long FinestParts = 1 << 12;

    public Network(PlanProblem problem)
    {
        ProblemCheck.Require(problem);
        Problem = problem;
        Sizes = [.. problem.Choices.Select(c => c.Costs.Length)];
        Parts = PartsFor(problem);
        Single = [.. problem.Choices.Select(c => c.Costs.Select(x => x * Parts).ToArray())];
        foreach (var table in problem.Tables.Where(t => t.Choices.Length == 1))
            AddTo(Single[table.Choices[0]], table.Costs);
        Pairs = [.. problem.Tables.Where(t => t.Choices.Length == 2).GroupBy(t => (Math.Min(t.Choices[0], t.Choices[1]), Math.Max(t.Choices[0], t.Choices[1]))).Select(g => Merge(g.Key, g))];
        Wide = [.. problem.Tables.Where(t => t.Choices.Length > 2).Select(t => new WideTable([.. t.Choices], [.. t.Choices.Select(c => Sizes[c])], [.. t.Costs.Select(Scaled)]))];
        Rows = [.. problem.Sums.Select(s => new SumRow(s))];
    }

    public PlanProblem Problem { get; }

    public int[] Sizes { get; }

    /// <summary>Into how many parts each unit of cost is cut.</summary>
    public long Parts { get; }

    /// <summary>Cost of each option by itself, in parts; <see cref="Impossible"/> when it may not be.</summary>
    public long[][] Single { get; }

    public PairTable[] Pairs { get; }

    public WideTable[] Wide { get; }

    public SumRow[] Rows { get; }

    private static long PartsFor(PlanProblem problem)
    {
        var most = problem.Choices.Sum(c => (decimal)c.Costs.Max())
            + problem.Tables.Sum(t => (decimal)t.Costs.Where(c => c != PlanTable.Forbidden).DefaultIfEmpty().Max());
        return (long)Math.Clamp((1L << 54) / (most + 1), 1, FinestParts);
    }

    private long Scaled(long cost) => cost == PlanTable.Forbidden ? Impossible : cost * Parts;

    private void AddTo(long[] sum, IReadOnlyList<long> costs)
    {
        for (var i = 0; i < sum.Length; i++)
            sum[i] = Math.Min(Impossible, sum[i] + Scaled(costs[i]));
    }

    private PairTable Merge((int First, int Second) pair, IEnumerable<PlanTable> tables)
    {
        var (rows, columns) = (Sizes[pair.First], Sizes[pair.Second]);
        var costs = new long[rows * columns];
        foreach (var table in tables)
            AddTo(costs, table.Choices[0] == pair.First ? table.Costs : Turned(table.Costs, columns, rows));
        return new PairTable(pair.First, pair.Second, columns, costs);
    }

    private static long[] Turned(IReadOnlyList<long> costs, int rows, int columns)
    {
        var turned = new long[costs.Count];
        for (var r = 0; r < rows; r++)
        {
            for (var c = 0; c < columns; c++)
                turned[(c * rows) + r] = costs[(r * columns) + c];
        }

        return turned;
    }
}

/// <summary>Costs of the options of two choices together, row by row of the first.</summary>
internal sealed record PairTable(int First, int Second, int Columns, long[] Costs);
