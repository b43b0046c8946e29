using CsCheck;
using RebuildApi.Checkers;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Tests.Planning;

/// <summary>The solver against plain enumeration (computed here, no source): equal optimum on thousands of small problems.</summary>
public sealed class BranchAndBoundTests
{
    private static readonly BranchAndBound s_solver = new();

    [Fact]
    public void The_cheapest_plan_is_the_one_that_plain_enumeration_finds() => RandomPlan.Any.Sample(
        problem =>
        {
            var solution = s_solver.Solve(problem, new PlanEffort());
            var cheapest = PlanEnumeration.Cheapest(Checked(problem));

            return cheapest is null
                ? solution.Status == SolveStatus.Impossible
                : solution.Status == SolveStatus.Proven && solution.Cost == cheapest && PlanEnumeration.CostOf(Checked(problem), solution.Picks) == cheapest;
        },
        iter: 4000);

    [Fact]
    public void A_search_that_is_stopped_says_how_far_it_may_be_from_the_best() => RandomPlan.Any.Sample(
        problem =>
        {
            var stopped = s_solver.Solve(problem, new PlanEffort(1));
            var cheapest = PlanEnumeration.Cheapest(Checked(problem));

            return stopped.Status switch
            {
                SolveStatus.Proven => stopped.Cost == cheapest,
                SolveStatus.Bounded => stopped.Bound <= cheapest && cheapest <= stopped.Cost && stopped.Gap > 0,
                SolveStatus.Impossible => cheapest is null,
                _ => !stopped.Exists,
            };
        },
        iter: 2000);

    [Fact]
    public void The_same_problem_gives_the_same_solution() => RandomPlan.Any.Sample(
        problem =>
        {
            var (first, again) = (s_solver.Solve(problem, new PlanEffort()), s_solver.Solve(problem, new PlanEffort()));

            return first.Picks.SequenceEqual(again.Picks) && first.Steps == again.Steps;
        },
        iter: 500);

    [Fact]
    public void A_table_of_the_wrong_length_is_refused()
    {
        var problem = new PlanProblem([new PlanChoice("a", [1, 2])], [new PlanTable("t", [0], [1])], []);

        Assert.Throws<ArgumentException>(() => s_solver.Solve(problem, new PlanEffort()));
    }

    private static CheckedPlan Checked(PlanProblem problem) => new(
        [.. problem.Choices.Select(c => c.Costs.ToArray())],
        [.. problem.Tables.Select(t => new CheckedTable([.. t.Choices], [.. t.Costs.Select(c => c == PlanTable.Forbidden ? (long?)null : c)]))],
        [.. problem.Sums.Select(s => new CheckedSum(
            s.Low == long.MinValue ? null : s.Low, s.High == long.MaxValue ? null : s.High, s.Guard, s.Variance,
            [.. s.Terms.Select(t => new CheckedTerm(t.Choice, [.. t.Amounts], t.Variances.IsDefaultOrEmpty ? null : [.. t.Variances]))]))]);
}
