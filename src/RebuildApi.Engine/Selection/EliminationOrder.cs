namespace RebuildApi.Engine.Selection;

/// <summary>In which order variables are eliminated, and how large the largest table becomes.</summary>
internal static class EliminationOrder
{
    /// <summary>The variable whose elimination is cheapest now, with the work that it takes.</summary>
    public static (int Variable, double Work) Next(IReadOnlySet<int> open, IEnumerable<int[]> scopes, int[] sizes)
    {
        var all = scopes.ToArray();
        return open.Select(v => (Variable: v, Work: Work(v, all, sizes))).MinBy(x => (x.Work, x.Variable));
    }

    /// <summary>The variables that share a factor with one, ascending, without itself.</summary>
    public static int[] Neighbours(int variable, IEnumerable<int[]> touching) => [.. touching.SelectMany(s => s).Where(v => v != variable).Distinct().Order()];

    /// <summary>The most work that any one elimination takes when all are made.</summary>
    public static double LargestWork(int[] sizes, IEnumerable<int[]> scopes)
    {
        var left = scopes.ToList();
        var open = Enumerable.Range(0, sizes.Length).ToHashSet();
        var largest = 0.0;
        while (open.Count > 0)
        {
            var (variable, work) = Next(open, left, sizes);
            largest = Math.Max(largest, work);
            open.Remove(variable);
            var touching = left.Where(s => s.Contains(variable)).ToArray();
            left.RemoveAll(s => s.Contains(variable));
            left.Add(Neighbours(variable, touching));
        }

        return largest;
    }

    private static double Work(int variable, int[][] scopes, int[] sizes) =>
        Neighbours(variable, scopes.Where(s => s.Contains(variable))).Aggregate((double)sizes[variable], (n, v) => n * sizes[v]);
}
