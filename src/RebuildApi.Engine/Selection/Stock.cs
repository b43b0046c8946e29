namespace RebuildApi.Engine.Selection;

/// <summary>Holds a choice to the pieces that there are, counted over all positions.</summary>
internal static class Stock
{
    /// <summary>A member of which more is chosen than there is, or none.</summary>
    public static string? Overdrawn(SelectionSolution solution, IReadOnlyDictionary<string, int>? available) => available is null
        ? null
        : solution.Picks.SelectMany(p => p.Option.Members).GroupBy(m => m, StringComparer.Ordinal)
            .Where(g => g.Count() > available.GetValueOrDefault(g.Key))
            .Select(g => g.Key)
            .Order(StringComparer.Ordinal)
            .FirstOrDefault();

    /// <summary>
    /// The rest of the problem without the choices that overdraw a member as this one does: in the i-th part the i-th of the choices that use it
    /// uses less of it, and those before it at least as much. Whatever keeps to the stock is in exactly one part.
    /// </summary>
    public static IEnumerable<int[][]> Split(CompiledProblem problem, int[][] allowed, SelectionSolution solution, string member)
    {
        var left = (int[][])allowed.Clone();
        for (var choice = 0; choice < allowed.Length; choice++)
        {
            var used = Uses(solution.Picks[choice].Option, member);
            if (used == 0)
                continue;
            var options = problem.Problem.Choices[choice].Options;
            var narrower = (int[][])left.Clone();
            narrower[choice] = [.. left[choice].Where(o => Uses(options[o], member) < used)];
            yield return narrower;
            left[choice] = [.. left[choice].Where(o => Uses(options[o], member) >= used)];
        }
    }

    private static int Uses(SelectionOption option, string member) => option.Members.Count(m => m == member);
}
