using CsCheck;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Tests.Planning;

/// <summary>When nothing fits: the demands named can't all be met, and without any one of them the others can.</summary>
public sealed class ConflictSearchTests
{
    private static readonly BranchAndBound s_solver = new();

    [Fact]
    public void Without_any_one_of_its_demands_a_conflict_is_gone() => RandomPlan.Any.Sample(
        problem =>
        {
            var conflicts = ConflictSearch.Find(problem, s_solver, new PlanEffort());

            return conflicts.IsEmpty == Fits(problem) && conflicts.All(c =>
                c.IsSmallest && !Fits(ConflictSearch.Under(problem, c.Demands.Contains)) && c.Demands.All(left => Fits(ConflictSearch.Under(problem, n => n != left && c.Demands.Contains(n)))));
        },
        iter: 1500);

    [Fact]
    public void Conflicts_have_no_demand_in_common() => RandomPlan.Any.Sample(
        problem =>
        {
            var all = ConflictSearch.Find(problem, s_solver, new PlanEffort()).SelectMany(c => c.Demands).ToArray();

            return all.Distinct().Count() == all.Length;
        },
        iter: 500);

    [Fact]
    public void What_fits_under_a_ceiling_is_the_same_whether_it_is_searched_under_it_or_for_it() => Gen.Select(RandomPlan.Any, Gen.Long[0, 60]).Sample(
        (problem, high) =>
        {
            var under = problem with { Sums = problem.Sums.Add(Ceiling(problem, high)) };

            return Feasibility.Of(under, s_solver, new PlanEffort()).Fits == Fits(under);
        },
        iter: 500);

    [Fact]
    public void A_search_that_may_not_look_further_names_a_conflict_but_does_not_call_it_the_smallest()
    {
        var impossible = new PlanTable("never", [0], [PlanTable.Forbidden, PlanTable.Forbidden]);
        var problem = new PlanProblem([new PlanChoice("a", [0, 0]), new PlanChoice("b", [0, 0])], [impossible, new PlanTable("free", [1], [0, PlanTable.Forbidden])], []);

        var stopped = Assert.Single(ConflictSearch.Find(problem, s_solver, new PlanEffort(1)));

        Assert.False(stopped.IsSmallest);
        Assert.Equal<string>(["never", "free"], stopped.Demands);
    }

    private static PlanSum Ceiling(PlanProblem problem, long high) => new(
        "ceiling", long.MinValue, high, [.. problem.Choices.Select((c, i) => new PlanTerm(i, [.. c.Costs.Select(cost => (long?)cost)], []))]);

    private static bool Fits(PlanProblem problem) => s_solver.Solve(problem, new PlanEffort()).Exists;
}
