using CsCheck;
using RebuildApi.Engine.Allocation;

namespace RebuildApi.Engine.Tests.Allocation;

public sealed class AssignmentTests
{
    /// <summary>Published examples: an open optimisation library's documentation (4 tasks to 5 workers: 265), an R assignment package's example (5), and
    /// textbook examples of 3 × 3 (5 and 12) and 4 × 4 (11), solved again here by enumeration.</summary>
    public static TheoryData<string, long> Published => new()
    {
        { "90 35 125 45 50 / 80 85 95 110 100 / 75 55 90 95 90 / 70 65 95 115 100", 265 },
        { "5 3 2 / 1 5 4 / 4 2 4", 5 },
        { "4 1 3 / 2 0 5 / 3 2 2", 5 },
        { "5 9 1 / 10 3 2 / 8 7 4", 12 },
        { "13 4 7 6 / 1 11 5 4 / 6 7 2 8 / 1 3 5 9", 11 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void A_published_example_comes_out_as_published(string rows, long cost)
    {
        var costs = Parse(rows);

        Assert.Equal(cost, Assignment.Cost(costs, Assignment.Solve(costs)!.Value));
    }

    [Fact]
    public void The_published_example_that_asks_for_the_most_comes_out_with_signs_turned()
    {
        // The same 3 × 3 of the R package: the largest sum is 14, on the diagonal.
        var costs = Parse("-5 -3 -2 / -1 -5 -4 / -4 -2 -4");

        Assert.Equal(-14, Assignment.Cost(costs, Assignment.Solve(costs)!.Value));
        Assert.True(Assignment.Solve(costs)!.Value is [0, 1, 2]);
    }

    [Fact]
    public void The_cheapest_assignment_is_the_one_that_plain_enumeration_finds() => Gen.Select(
        Gen.Int[1, 5], Gen.Int[0, 2], Gen.OneOf(Gen.Long[-9, 20], Gen.Long[0, 20], Gen.Const(Assignment.Forbidden)).Array[35], (rows, more, costs) => (rows, columns: rows + more, costs))
        .Sample(
            x =>
            {
                var costs = Enumerable.Range(0, x.rows).Select(r => x.costs[(r * x.columns)..((r + 1) * x.columns)]).ToArray();
                var solved = Assignment.Solve(costs);

                return (solved is { } s ? Assignment.Cost(costs, s) : (long?)null) == Enumerated(costs, 0, []);
            },
            iter: 3000);

    [Fact]
    public void More_rows_than_columns_can_not_all_have_one() => Assert.Null(Assignment.Solve([[1], [2]]));

    private static long? Enumerated(long[][] costs, int row, HashSet<int> used) => row == costs.Length ? 0 : Enumerable.Range(0, costs[row].Length)
        .Where(c => !used.Contains(c) && costs[row][c] != Assignment.Forbidden)
        .Select(c => costs[row][c] + Enumerated(costs, row + 1, [.. used, c]))
        .Min();

    private static long[][] Parse(string rows) => [.. rows.Split('/').Select(r => r.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(c => long.Parse(c, System.Globalization.CultureInfo.InvariantCulture)).ToArray())];
}
