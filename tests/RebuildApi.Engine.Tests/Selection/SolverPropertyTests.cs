using System.Numerics;
using CsCheck;
using RebuildApi.Checkers;
using RebuildApi.Contracts;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Engine.Tests.Selection;

public class SolverPropertyTests
{
    [Fact]
    public void Best_and_its_alternatives_rank_as_the_first_of_all_choices_tried_one_by_one() => RandomProblem.Any.Sample(
        problem =>
        {
            var all = SelectionChecker.AllRanks(RandomProblem.Checked(problem));

            var answer = SelectionSolver.Solve(problem, 4);

            var found = answer.Alternatives.Prepend(answer.Best!).Select(s => RankOf(problem, s)).ToArray();
            Assert.Equal(Math.Min(5, all.Count), found.Length);
            for (var i = 0; i < found.Length; i++)
                Assert.Equal(0, all[i].CompareTo(found[i]));
        },
        iter: 3000);

    [Fact]
    public void Claimed_rank_is_that_of_the_choice_and_no_better_one_is_found() => RandomProblem.Any.Sample(
        problem =>
        {
            var claimed = SelectionSolver.Solve(problem).Best!;

            var scale = problem.Loops.SelectMany(l => l.Terms).Aggregate(1, (lcm, t) => lcm / (int)BigInteger.GreatestCommonDivisor(lcm, t.Denominator) * t.Denominator);
            var independent = RankOf(problem, claimed);
            Assert.Equal(independent.Margin, claimed.Rank.Margin);
            Assert.Equal(0, independent.Distance.CompareTo(new Fraction(claimed.Rank.Distance, scale)));
            Assert.Equal((independent.Pieces, independent.Cost, independent.Removed), (claimed.Rank.Pieces, claimed.Rank.Cost, claimed.Rank.Removed));
            Assert.Null(SelectionChecker.FindBetter(RandomProblem.Checked(problem), PicksOf(problem, claimed)));
        },
        iter: 2000);

    [Fact]
    public void Stock_is_kept_to_over_all_positions_and_nothing_in_stock_is_better() => Gen.Select(RandomProblem.Any, Gen.Int[0, 6]).Sample(
        (problem, inStock) =>
        {
            var limited = problem with { Available = new Dictionary<string, int> { ["piece"] = inStock } };
            var best = AllPicks(problem).Where(p => p.Select((o, c) => problem.Choices[c].Options[o].Members.Length).Sum() <= inStock)
                .Select(RandomProblem.Checked(problem).RankOf).Order().FirstOrDefault();

            var answer = SelectionSolver.Solve(limited);

            Assert.Equal(best is null, answer.Best is null);
            if (best is not null)
                Assert.Equal(0, best.CompareTo(RankOf(problem, answer.Best!)));
        },
        iter: 1000);

    [Fact]
    public void Order_of_loops_and_choices_does_not_change_the_rank() => RandomProblem.Any.Sample(
        problem =>
        {
            var turned = new SelectionProblem([.. problem.Loops.Reverse()], [.. problem.Choices.Reverse()]);

            Assert.Equal(SelectionSolver.Solve(problem).Best!.Rank, SelectionSolver.Solve(turned).Best!.Rank);
        },
        iter: 500);

    private static IEnumerable<int[]> AllPicks(SelectionProblem problem) => problem.Choices.Aggregate(
        (IEnumerable<int[]>)[[]], (all, choice) => all.SelectMany(a => Enumerable.Range(0, choice.Options.Length).Select(o => (int[])[.. a, o])));

    private static CheckedRank RankOf(SelectionProblem problem, SelectionSolution solution) =>
        RandomProblem.Checked(problem).RankOf(PicksOf(problem, solution));

    private static int[] PicksOf(SelectionProblem problem, SelectionSolution solution) =>
        [.. solution.Picks.Select((p, c) => problem.Choices[c].Options.Select((o, i) => (o, i)).First(x => ReferenceEquals(x.o, p.Option)).i)];
}
