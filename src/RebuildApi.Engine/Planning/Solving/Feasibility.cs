using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// Whether anything fits at all. A ceiling over many choices (what it may cost together) is the hardest of sums to search under and the easiest to search
/// for: the cheapest choice by its amounts keeps it or nothing does. So the widest ceiling becomes the cost, and is no sum any more.
/// </summary>
public static class Feasibility
{
    /// <summary>True when something fits, false when nothing does, none when the effort did not suffice to say.</summary>
    /// <param name="problem">The problem; its costs are not asked.</param>
    /// <param name="solver">What solves it.</param>
    /// <param name="effort">How long it may look.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>The answer, and how many nodes of the search it took.</returns>
    public static (bool? Fits, long Steps) Of(PlanProblem problem, IPlanSolver solver, PlanEffort effort, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(solver);
        var ceiling = problem.Sums.Where(IsCeiling).MaxBy(s => s.Terms.Length);
        var solution = solver.Solve(ceiling is null ? Free(problem) : Cheapest(problem, ceiling), effort, cancellation);
        bool? fits = solution switch
        {
            { Status: SolveStatus.Impossible } => false,
            { Exists: true } when ceiling is null || solution.Cost <= ceiling.High => true,
            { Exists: true } when solution.Bound > ceiling!.High => false,
            _ => null,
        };
        return (fits, solution.Steps);
    }

    private static bool IsCeiling(PlanSum sum) =>
        sum.Low == long.MinValue && sum.High >= 0 && sum.Guard == 0 && sum.Terms.All(t => t.Amounts.All(a => a >= 0));

    private static PlanProblem Free(PlanProblem problem) => problem with
    {
        Choices = [.. problem.Choices.Select(c => c with { Costs = [.. c.Costs.Select(_ => 0L)] })],
        Tables = [.. problem.Tables.Where(t => t.Costs.Contains(PlanTable.Forbidden)).Select(t => t with { Costs = [.. t.Costs.Select(c => c == PlanTable.Forbidden ? c : 0)] })],
    };

    private static PlanProblem Cheapest(PlanProblem problem, PlanSum ceiling)
    {
        var free = Free(problem);
        var amounts = ceiling.Terms.ToDictionary(t => t.Choice, t => t.Amounts);
        return free with
        {
            Choices = [.. free.Choices.Select((c, i) => amounts.TryGetValue(i, out var a) ? c with { Costs = [.. a.Select(x => x!.Value)] } : c)],
            Sums = [.. problem.Sums.Where(s => !ReferenceEquals(s, ceiling))],
        };
    }
}
