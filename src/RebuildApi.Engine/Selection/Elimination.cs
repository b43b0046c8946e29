namespace RebuildApi.Engine.Selection;

/// <summary>How values of factors are put together, and which of two is better.</summary>
/// <typeparam name="T">The values.</typeparam>
internal interface IAlgebra<T>
{
    static abstract T Neutral { get; }

    static abstract T Combine(T a, T b);

    static abstract bool IsBetter(T a, T b);
}

/// <summary>The smallest of margins counts, and the largest such smallest is wanted.</summary>
internal readonly struct LargestSmallest : IAlgebra<long>
{
    public static long Neutral => long.MaxValue;

    public static long Combine(long a, long b) => a < b ? a : b;

    public static bool IsBetter(long a, long b) => a > b;
}

/// <summary>Burdens add up, and the least sum is wanted; what is impossible stays so.</summary>
internal readonly struct LeastSum : IAlgebra<Int128>
{
    /// <summary>More than any sum of burdens, and far from overflow.</summary>
    public static readonly Int128 Impossible = Int128.One << 120;

    public static Int128 Neutral => 0;

    public static Int128 Combine(Int128 a, Int128 b)
    {
        if (a >= Impossible || b >= Impossible)
            return Impossible;
        return a + b;
    }

    public static bool IsBetter(Int128 a, Int128 b) => a < b;
}

/// <summary>A table over some variables; the last variable runs fastest.</summary>
/// <param name="Variables">Ascending.</param>
/// <param name="Table">One value for each combination.</param>
internal sealed record Factor<T>(int[] Variables, T[] Table)
{
    /// <summary>How far apart neighbours in one variable are; 0 for a variable that is not in it.</summary>
    public int StrideOf(int variable, int[] sizes)
    {
        var stride = 1;
        for (var i = Variables.Length - 1; i >= 0; i--)
        {
            if (Variables[i] == variable)
                return stride;
            stride *= sizes[Variables[i]];
        }

        return 0;
    }
}

/// <summary>
/// Exact optimisation over tables by eliminating one variable after another (bucket elimination): what a variable's best value is, given its
/// neighbours, becomes a table of the neighbours alone. The work grows with the largest such table, not with the number of variables.
/// </summary>
internal static class Elimination
{
    /// <summary>A value of every variable that makes the combination of all factors best.</summary>
    /// <param name="sizes">Number of values of each variable.</param>
    /// <param name="factors">The factors.</param>
    public static int[] Solve<T, TAlgebra>(int[] sizes, IEnumerable<Factor<T>> factors)
        where TAlgebra : struct, IAlgebra<T>
    {
        var left = factors.Where(f => f.Variables.Length > 0).ToList();
        var steps = new List<(int Variable, int[] Scope, int[] Best)>(sizes.Length);
        var open = Enumerable.Range(0, sizes.Length).ToHashSet();
        while (open.Count > 0)
        {
            var variable = EliminationOrder.Next(open, left.Select(f => f.Variables), sizes).Variable;
            open.Remove(variable);
            var touching = left.Where(f => f.Variables.Contains(variable)).ToArray();
            left.RemoveAll(f => f.Variables.Contains(variable));
            var scope = EliminationOrder.Neighbours(variable, touching.Select(f => f.Variables));
            var (factor, best) = Eliminate<T, TAlgebra>(variable, scope, touching, sizes);
            steps.Add((variable, scope, best));
            if (scope.Length > 0)
                left.Add(factor);
        }

        return Unwind(steps, sizes);
    }

    private static (Factor<T> Factor, int[] Best) Eliminate<T, TAlgebra>(int variable, int[] scope, Factor<T>[] touching, int[] sizes)
        where TAlgebra : struct, IAlgebra<T>
    {
        var count = scope.Aggregate(1, (n, v) => n * sizes[v]);
        var (table, best) = (new T[count], new int[count]);
        var strides = scope.Select(v => touching.Select(f => f.StrideOf(v, sizes)).ToArray()).ToArray();
        var own = touching.Select(f => f.StrideOf(variable, sizes)).ToArray();
        var at = new int[touching.Length];
        var counter = new int[scope.Length];
        for (var entry = 0; entry < count; entry++)
        {
            (table[entry], best[entry]) = BestValue<T, TAlgebra>(touching, at, own, sizes[variable]);
            Advance(counter, scope, sizes, strides, at);
        }

        return (new Factor<T>(scope, table), best);
    }

    private static (T Value, int Best) BestValue<T, TAlgebra>(Factor<T>[] touching, int[] at, int[] own, int size)
        where TAlgebra : struct, IAlgebra<T>
    {
        var (bestValue, best) = (default(T)!, -1);
        for (var value = 0; value < size; value++)
        {
            var sum = TAlgebra.Neutral;
            for (var f = 0; f < touching.Length; f++)
                sum = TAlgebra.Combine(sum, touching[f].Table[at[f] + (value * own[f])]);
            if (best < 0 || TAlgebra.IsBetter(sum, bestValue))
                (bestValue, best) = (sum, value);
        }

        return (bestValue, best);
    }

    /// <summary>The next combination of the scope, last variable fastest, with the places in all tables kept in step.</summary>
    private static void Advance(int[] counter, int[] scope, int[] sizes, int[][] strides, int[] at)
    {
        for (var i = scope.Length - 1; i >= 0; i--)
        {
            var wraps = ++counter[i] == sizes[scope[i]];
            for (var f = 0; f < at.Length; f++)
                at[f] += wraps ? -strides[i][f] * (sizes[scope[i]] - 1) : strides[i][f];
            if (!wraps)
                return;
            counter[i] = 0;
        }
    }

    private static int[] Unwind(List<(int Variable, int[] Scope, int[] Best)> steps, int[] sizes)
    {
        var values = new int[sizes.Length];
        for (var s = steps.Count - 1; s >= 0; s--)
        {
            var (variable, scope, best) = steps[s];
            values[variable] = best[scope.Aggregate(0, (entry, v) => (entry * sizes[v]) + values[v])];
        }

        return values;
    }
}
