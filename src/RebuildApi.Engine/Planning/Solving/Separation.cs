using System.Collections.Immutable;

namespace RebuildApi.Engine.Planning.Solving;

/// <summary>A part of a problem that nothing ties to the rest, over the options that are still open.</summary>
/// <param name="Problem">The part.</param>
/// <param name="Choices">Which choices of the whole it holds.</param>
/// <param name="Options">Their open options.</param>
internal sealed record Separate(PlanProblem Problem, int[] Choices, int[][] Options);

/// <summary>Takes a problem apart where nothing ties its choices together once those with one option left are decided.</summary>
internal static class Separation
{
    /// <summary>The parts. What is already decided is in none of them.</summary>
    public static IEnumerable<Separate> Of(PlanProblem problem, Domains domains)
    {
        var group = Enumerable.Range(0, domains.Count).ToArray();
        foreach (var scope in problem.Tables.Select(t => t.Choices).Concat(problem.Sums.Select(s => s.Terms.Select(t => t.Choice).ToImmutableArray())))
        {
            var open = scope.Where(c => domains.Size(c) > 1).ToArray();
            for (var i = 1; i < open.Length; i++)
                group[Root(group, open[i])] = Root(group, open[0]);
        }

        return Enumerable.Range(0, domains.Count).Where(c => domains.Size(c) > 1)
            .GroupBy(c => Root(group, c))
            .Select(g => Part([.. g], problem, domains));
    }

    private static int Root(int[] group, int choice)
    {
        while (group[choice] != choice)
            choice = group[choice] = group[group[choice]];
        return choice;
    }

    private static Separate Part(int[] choices, PlanProblem problem, Domains domains)
    {
        var options = choices.Select(c => domains.Of(c).ToArray().Order().ToArray()).ToArray();
        var index = choices.Select((c, i) => (c, i)).ToDictionary(x => x.c, x => x.i);
        var part = new PlanProblem(
            [.. choices.Select((c, i) => new PlanChoice(problem.Choices[c].Id, [.. options[i].Select(o => problem.Choices[c].Costs[o])]))],
            [.. problem.Tables.Where(t => t.Choices.Any(index.ContainsKey)).Select(t => Slice(t, index, options, problem, domains))],
            [.. problem.Sums.Where(s => s.Terms.Any(t => index.ContainsKey(t.Choice))).Select(s => Slice(s, index, options, domains)).OfType<PlanSum>()]);
        return new Separate(part, choices, options);
    }

    private static PlanTable Slice(PlanTable table, Dictionary<int, int> index, int[][] options, PlanProblem problem, Domains domains)
    {
        IEnumerable<int> entries = [0];
        foreach (var choice in table.Choices)
        {
            var size = problem.Choices[choice].Costs.Length;
            var open = index.TryGetValue(choice, out var i) ? options[i] : [domains.Of(choice)[0]];
            entries = entries.SelectMany(e => open.Select(o => (e * size) + o)).ToArray();
        }

        return new PlanTable(table.Demand, [.. table.Choices.Where(index.ContainsKey).Select(c => index[c])], [.. entries.Select(e => table.Costs[e])]);
    }

    /// <summary>The sum over the open choices, what is decided taken into its ends; none when something decided leaves it free.</summary>
    private static PlanSum? Slice(PlanSum sum, Dictionary<int, int> index, int[][] options, Domains domains)
    {
        var (fixedAmount, variance) = (0L, sum.Variance);
        foreach (var term in sum.Terms.Where(t => !index.ContainsKey(t.Choice)))
        {
            var option = domains.Of(term.Choice)[0];
            if (term.Amounts[option] is not { } amount)
                return null;
            fixedAmount += amount;
            variance += term.Variances.IsDefaultOrEmpty ? 0 : term.Variances[option];
        }

        return sum with
        {
            Low = sum.Low == long.MinValue ? sum.Low : sum.Low - fixedAmount,
            High = sum.High == long.MaxValue ? sum.High : sum.High - fixedAmount,
            Variance = variance,
            Terms = [.. sum.Terms.Where(t => index.ContainsKey(t.Choice)).Select(t => Slice(t, index[t.Choice], options[index[t.Choice]]))],
        };
    }

    private static PlanTerm Slice(PlanTerm term, int choice, int[] options) => new(
        choice,
        [.. options.Select(o => term.Amounts[o])],
        term.Variances.IsDefaultOrEmpty ? [] : [.. options.Select(o => term.Variances[o])]);
}
