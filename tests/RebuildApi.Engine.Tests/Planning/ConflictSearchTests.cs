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
                !Fits(ConflictSearch.Under(problem, c.Contains)) && c.All(left => Fits(ConflictSearch.Under(problem, n => n != left && c.Contains(n)))));
        },
        iter: 1500);

    [Fact]
    public void Conflicts_have_no_demand_in_common() => RandomPlan.Any.Sample(
        problem =>
        {
            var all = ConflictSearch.Find(problem, s_solver, new PlanEffort()).SelectMany(c => c).ToArray();

            return all.Distinct().Count() == all.Length;
        },
        iter: 500);

    private static bool Fits(PlanProblem problem) => s_solver.Solve(problem, new PlanEffort()).Exists;
}
