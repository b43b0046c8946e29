using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>What a solver found.</summary>
/// <param name="Status">How sure it is.</param>
/// <param name="Picks">The option taken for each choice; empty when there is none.</param>
/// <param name="Cost">What they cost together.</param>
/// <param name="Bound">No solution costs less; the same as the cost when it is proven.</param>
/// <param name="Steps">How many nodes of the search were looked at; equal for equal inputs.</param>
public sealed record PlanSolution(SolveStatus Status, ImmutableArray<int> Picks, long Cost, long Bound, long Steps)
{
    /// <summary>Whether there is a solution.</summary>
    public bool Exists => !Picks.IsDefaultOrEmpty;

    /// <summary>How much less another solution could cost at most; 0 when it is proven.</summary>
    public long Gap => Exists ? Cost - Bound : 0;
}

/// <summary>How sure a solver is.</summary>
public enum SolveStatus
{
    /// <summary>The limit stopped it before it found anything.</summary>
    Unknown,

    /// <summary>Nothing else costs less.</summary>
    Proven,

    /// <summary>The limit stopped it; the bound says how far it may be from the best.</summary>
    Bounded,

    /// <summary>Nothing fits; proven.</summary>
    Impossible,
}

/// <summary>Finds the cheapest plan.</summary>
public interface IPlanSolver
{
    /// <summary>Solves a problem. The same problem and effort give the same solution, unless it is cancelled.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="effort">How long it may look.</param>
    /// <param name="cancellation">Stops it; what was found by then is returned with its bound.</param>
    /// <exception cref="ArgumentException">The problem is no such thing: an index, a length or a cost out of range.</exception>
    PlanSolution Solve(PlanProblem problem, PlanEffort effort, CancellationToken cancellation = default);
}

/// <summary>How long a solver may look. Counted in nodes and not in seconds, so that equal inputs give equal answers on every machine.</summary>
/// <param name="MostSteps">Most nodes of the search.</param>
public sealed record PlanEffort(long MostSteps = 2_000_000);
