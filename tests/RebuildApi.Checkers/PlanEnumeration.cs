namespace RebuildApi.Checkers;

/// <summary>A plan in numbers, as the checker sees it.</summary>
/// <param name="Choices">The cost of each option of each choice.</param>
/// <param name="Tables">What combinations cost; none where they may not be.</param>
/// <param name="Sums">What must lie in a window.</param>
public sealed record CheckedPlan(IReadOnlyList<long[]> Choices, IReadOnlyList<CheckedTable> Tables, IReadOnlyList<CheckedSum> Sums);

/// <summary>Costs of combinations, the last choice running fastest; none where they may not be.</summary>
public sealed record CheckedTable(int[] Choices, long?[] Costs);

/// <summary>A sum with its window; a member without an amount leaves it free.</summary>
public sealed record CheckedSum(long? Low, long? High, double Guard, double Variance, CheckedTerm[] Terms);

/// <summary>What a choice adds.</summary>
public sealed record CheckedTerm(int Choice, long?[] Amounts, double[]? Variances);

/// <summary>Tries everything. Knows nothing of the solver.</summary>
public static class PlanEnumeration
{
    /// <summary>The least cost of all plans that are allowed, or none.</summary>
    public static long? Cheapest(CheckedPlan plan)
    {
        IEnumerable<int[]> all = [[]];
        foreach (var choice in plan.Choices)
            all = all.SelectMany(a => Enumerable.Range(0, choice.Length).Select(o => (int[])[.. a, o])).ToArray();
        return all.Select(a => CostOf(plan, a)).Min();
    }

    /// <summary>What one plan costs; none when something forbids it.</summary>
    public static long? CostOf(CheckedPlan plan, IReadOnlyList<int> picks)
    {
        var cost = plan.Choices.Select((c, i) => c[picks[i]]).Sum();
        foreach (var table in plan.Tables)
        {
            var entry = 0;
            foreach (var choice in table.Choices)
                entry = (entry * plan.Choices[choice].Length) + picks[choice];
            if (table.Costs[entry] is not { } extra)
                return null;
            cost += extra;
        }

        return plan.Sums.All(s => Holds(s, picks)) ? cost : null;
    }

    private static bool Holds(CheckedSum sum, IReadOnlyList<int> picks)
    {
        if (sum.Terms.Any(t => t.Amounts[picks[t.Choice]] is null))
            return true;
        var total = sum.Terms.Sum(t => t.Amounts[picks[t.Choice]]!.Value);
        var variance = sum.Variance + sum.Terms.Sum(t => t.Variances is { } v ? v[picks[t.Choice]] : 0);
        var guard = (long)Math.Ceiling((sum.Guard * Math.Sqrt(variance)) - 1e-6);
        return !(total < sum.Low + guard) && !(total > sum.High - guard);
    }
}
