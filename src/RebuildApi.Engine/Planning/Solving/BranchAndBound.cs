using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>
/// The solver of the house: removes what can't be, takes the problem apart where nothing ties it together, and searches each part with a bound that
/// moves costs between tables. Managed code alone, one thread, no chance in it.
/// </summary>
public sealed class BranchAndBound : IPlanSolver
{
    /// <inheritdoc/>
    public PlanSolution Solve(PlanProblem problem, PlanEffort effort, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(effort);
        var root = new Search(new Network(problem), 0, cancellation);
        if (!root.NarrowRoot())
            return new PlanSolution(SolveStatus.Impossible, [], 0, 0, 0);
        var picks = Enumerable.Range(0, problem.Choices.Length).Select(c => root.Domains.Of(c)[0]).ToArray();
        var (steps, slack, isBounded) = (0L, 0L, false);
        foreach (var part in Separation.Of(problem, root.Domains))
        {
            var search = new Search(new Network(part.Problem), Math.Max(0, effort.MostSteps - steps), cancellation);
            search.Run(Search.PassesAtRoot);
            steps += search.Steps;
            if (search.Best is not { } best)
                return new PlanSolution(search.Stopped ? SolveStatus.Unknown : SolveStatus.Impossible, [], 0, 0, steps);
            for (var i = 0; i < best.Length; i++)
                picks[part.Choices[i]] = part.Options[i][best[i]];
            slack += search.Slack;
            isBounded |= search.Slack > 0;
        }

        var cost = Cost(problem, picks);
        return cost is not { } total
            ? new PlanSolution(SolveStatus.Impossible, [], 0, 0, steps)
            : new PlanSolution(isBounded ? SolveStatus.Bounded : SolveStatus.Proven, [.. picks], total, total - slack, steps);
    }

    /// <summary>What a complete choice costs; none when something forbids it.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="picks">One option for each choice.</param>
    public static long? Cost(PlanProblem problem, IReadOnlyList<int> picks)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var cost = problem.Choices.Select((c, i) => c.Costs[picks[i]]).Sum();
        foreach (var table in problem.Tables)
        {
            var entry = table.Choices.Aggregate(0, (e, c) => (e * problem.Choices[c].Costs.Length) + picks[c]);
            if (table.Costs[entry] == PlanTable.Forbidden)
                return null;
            cost += table.Costs[entry];
        }

        return problem.Sums.All(s => new SumRow(s).Holds([.. picks])) ? cost : null;
    }
}
