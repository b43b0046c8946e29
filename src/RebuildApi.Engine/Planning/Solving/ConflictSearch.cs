using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// Which demands of a problem can't all be met: demands are left out as long as nothing fits without them; what then remains is irreducible, each left out
/// by itself having been tried. Then the same again without those, for conflicts that have nothing in common with it.
/// </summary>
public static class ConflictSearch
{
    private const int Most = 4;

    /// <summary>The conflicts; empty when something fits, or when the effort did not suffice to say.</summary>
    /// <param name="problem">The problem; its costs are not asked.</param>
    /// <param name="solver">What solves it.</param>
    /// <param name="effort">How long all tries together may take; a try that is stopped counts as "something fits", and the conflict as not proven smallest.</param>
    /// <param name="cancellation">Stops it; conflicts not yet found are left out.</param>
    public static ImmutableArray<FoundConflict> Find(PlanProblem problem, IPlanSolver solver, PlanEffort effort, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(effort);
        var steps = effort.MostSteps;
        var left = problem.Tables.Select(t => t.Demand).Concat(problem.Sums.Select(s => s.Demand)).Distinct().ToImmutableArray();
        var found = ImmutableArray.CreateBuilder<FoundConflict>();
        while (found.Count < Most && IsImpossible(left) == true)
        {
            var core = Shrink(left);
            found.Add(core);
            left = left.RemoveRange(core.Demands);
        }

        return found.ToImmutable();

        // Leaves out halves, then quarters, and at last one by one.
        FoundConflict Shrink(ImmutableArray<string> demands)
        {
            for (var chunk = Math.Max(1, demands.Length / 2); ; chunk = Math.Max(1, chunk / 2))
            {
                var isSure = true;
                for (var start = 0; start < demands.Length;)
                {
                    var less = demands.RemoveRange(start, Math.Min(chunk, demands.Length - start));
                    var impossible = IsImpossible(less);
                    isSure &= impossible is not null;
                    if (impossible == true)
                        demands = less;
                    else
                        start += chunk;
                }

                if (chunk == 1)
                    return new FoundConflict(demands, isSure);
            }
        }

        bool? IsImpossible(ImmutableArray<string> demands)
        {
            if (steps <= 0 || cancellation.IsCancellationRequested)
                return null;
            var (fits, taken) = Feasibility.Of(Under(problem, demands.ToHashSet(StringComparer.Ordinal).Contains), solver, effort with { MostSteps = steps }, cancellation);
            steps -= taken + 1;
            return !fits;
        }
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

/// <summary>Demands that can't all be met.</summary>
/// <param name="Demands">Their names.</param>
/// <param name="IsSmallest">Whether each was tried: without any one of them the others can be met. Else the limit stopped it, and there may be fewer.</param>
public sealed record FoundConflict(ImmutableArray<string> Demands, bool IsSmallest);
