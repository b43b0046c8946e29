using System.Collections.Immutable;

namespace RebuildApi.Engine.Selection;

/// <summary>Chooses rings, shims, washers and cuts for all coupled clearances at once: the proven optimum, and the next best after it.</summary>
public static class SelectionSolver
{
    /// <summary>Solves a problem.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="alternatives">How many more choices to rank after the best; not negative.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The problem is none: an empty list, an unknown or double id, a coefficient or an uncertainty that is none.</exception>
    public static SelectionAnswer Solve(SelectionProblem problem, int alternatives = 0, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(alternatives);
        var compiled = new CompiledProblem(problem);
        var found = new List<SelectionSolution>();
        var open = new PriorityQueue<Part, (SelectionRank Rank, int Order)>();
        Enqueue(open, compiled, compiled.AllAllowed(), cancellation);
        while (found.Count <= alternatives && open.TryDequeue(out var part, out _))
        {
            if (Stock.Overdrawn(part.Solution, problem.Available) is { } member)
            {
                foreach (var narrower in Stock.Split(compiled, part.Allowed, part.Solution, member))
                    Enqueue(open, compiled, narrower, cancellation);
                continue;
            }

            found.Add(part.Solution);
            if (found.Count > alternatives)
                break;
            foreach (var narrower in Without(compiled, part))
                Enqueue(open, compiled, narrower, cancellation);
        }

        return new SelectionAnswer(found.FirstOrDefault(), [.. found.Skip(1)]);
    }

    private static void Enqueue(PriorityQueue<Part, (SelectionRank Rank, int Order)> open, CompiledProblem problem, int[][] allowed, CancellationToken cancellation)
    {
        if (SelectionSearch.Best(problem, allowed, cancellation) is { } solution)
            open.Enqueue(new Part(allowed, solution), (solution.Rank, open.Count));
    }

    /// <summary>
    /// All but one complete choice, in parts that do not overlap (Lawler 1972): in the i-th, the first i−1 choices are as they were and the i-th
    /// is not. The best of the parts is the next best of the whole.
    /// </summary>
    private static IEnumerable<int[][]> Without(CompiledProblem problem, Part part)
    {
        var allowed = (int[][])part.Allowed.Clone();
        for (var choice = 0; choice < allowed.Length; choice++)
        {
            var picked = part.Solution.Picks[choice].Option;
            var taken = Array.Find(allowed[choice], o => ReferenceEquals(problem.Problem.Choices[choice].Options[o], picked));
            var narrower = (int[][])allowed.Clone();
            narrower[choice] = [.. allowed[choice].Where(o => o != taken)];
            yield return narrower;
            allowed[choice] = [taken];
        }
    }

    private sealed record Part(int[][] Allowed, SelectionSolution Solution);
}
