using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// Which demands of a problem can't all be met: demands are left out as long as nothing fits without them; what then remains is irreducible, each left out
/// by itself having been tried. Then the same again without those, for conflicts that have nothing in common with it.
/// </summary>
public static class ConflictSearch
{
    private const int Most = 4;

    /// <summary>The conflicts, as the names of their demands; empty when something fits, or when the effort did not suffice to say.</summary>
    /// <param name="problem">The problem; its costs are not asked.</param>
    /// <param name="solver">What solves it.</param>
    /// <param name="effort">How long each try may take; a try that is stopped counts as "something fits".</param>
    /// <param name="cancellation">Stops it; conflicts not yet found are left out.</param>
    public static ImmutableArray<ImmutableArray<string>> Find(PlanProblem problem, IPlanSolver solver, PlanEffort effort, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(solver);
        var left = problem.Tables.Select(t => t.Demand).Concat(problem.Sums.Select(s => s.Demand)).Distinct().ToImmutableArray();
        var found = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        while (found.Count < Most && !cancellation.IsCancellationRequested && IsImpossible(left))
        {
            var core = Shrink(left);
            found.Add(core);
            left = left.RemoveRange(core);
        }

        return found.ToImmutable();

        // Leaves out halves, then quarters, and at last one by one.
        ImmutableArray<string> Shrink(ImmutableArray<string> demands)
        {
            for (var chunk = Math.Max(1, demands.Length / 2); ; chunk = Math.Max(1, chunk / 2))
            {
                for (var start = 0; start < demands.Length;)
                {
                    var less = demands.RemoveRange(start, Math.Min(chunk, demands.Length - start));
                    if (IsImpossible(less))
                        demands = less;
                    else
                        start += chunk;
                }

                if (chunk == 1)
                    return demands;
            }
        }

        bool IsImpossible(ImmutableArray<string> demands) =>
            solver.Solve(Under(problem, demands.ToHashSet(StringComparer.Ordinal).Contains), effort, cancellation).Status == SolveStatus.Impossible;
    }

    /// <summary>The problem with some of its demands only.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="wanted">Which demands stay.</param>
    public static PlanProblem Under(PlanProblem problem, Func<string, bool> wanted)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return problem with
        {
            Tables = [.. problem.Tables.Where(t => wanted(t.Demand))],
            Sums = [.. problem.Sums.Where(s => wanted(s.Demand))],
        };
    }
}
