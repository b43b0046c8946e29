namespace RebuildApi.Engine.Planning.Solving;

/// <summary>Refuses what is no problem, before anything is worked out.</summary>
internal static class ProblemCheck
{
    /// <summary>Largest sum of costs that can be weighed.</summary>
    private const decimal Most = 1L << 54;

    public static void Require(PlanProblem problem)
    {
        Require(!problem.Choices.IsDefaultOrEmpty, "A plan has at least one choice.");
        foreach (var choice in problem.Choices)
            Require(!choice.Costs.IsDefaultOrEmpty && choice.Costs.All(c => c >= 0), $"{choice.Id}: at least one option, no cost below zero.");
        foreach (var table in problem.Tables)
            Require(table, problem);
        foreach (var sum in problem.Sums)
            Require(sum, problem);
        var most = problem.Choices.Sum(c => (decimal)c.Costs.Max()) + problem.Tables.Sum(t => (decimal)t.Costs.Where(c => c != PlanTable.Forbidden).DefaultIfEmpty().Max());
        Require(most <= Most, "The costs are larger than can be weighed together.");
    }

    private static void Require(PlanTable table, PlanProblem problem)
    {
        Require(!table.Choices.IsDefaultOrEmpty && table.Choices.All(c => c >= 0 && c < problem.Choices.Length), $"{table.Demand}: a table names choices that there are.");
        Require(table.Choices.Distinct().Count() == table.Choices.Length, $"{table.Demand}: a table names a choice once.");
        Require(table.Costs.Length == table.Choices.Aggregate(1L, (n, c) => n * problem.Choices[c].Costs.Length), $"{table.Demand}: one cost for each combination.");
        Require(table.Costs.All(c => c >= 0), $"{table.Demand}: no cost below zero.");
    }

    private static void Require(PlanSum sum, PlanProblem problem)
    {
        Require(sum.Terms.Select(t => t.Choice).Distinct().Count() == sum.Terms.Length, $"{sum.Demand}: a sum names a choice once.");
        Require(sum.Guard >= 0 && sum.Variance >= 0, $"{sum.Demand}: no guard or variance below zero.");
        foreach (var term in sum.Terms)
        {
            Require(term.Choice >= 0 && term.Choice < problem.Choices.Length, $"{sum.Demand}: a sum names choices that there are.");
            var options = problem.Choices[term.Choice].Costs.Length;
            Require(term.Amounts.Length == options && (term.Variances.IsDefaultOrEmpty || term.Variances.Length == options), $"{sum.Demand}: one amount for each option.");
        }
    }

    private static void Require(bool holds, string message)
    {
        if (!holds)
            throw new ArgumentException("problem: " + message);
    }
}
