using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>Refuses problems that are none.</summary>
internal static class SelectionCheck
{
    /// <exception cref="ArgumentException">The field that is wrong is named.</exception>
    public static void Require(SelectionProblem problem)
    {
        if (problem.Loops.IsDefaultOrEmpty)
            throw new ArgumentException("There is no clearance to bring right.", nameof(problem));
        if (problem.Choices.IsDefaultOrEmpty)
            throw new ArgumentException("There is nothing to choose.", nameof(problem));
        RequireDistinct(problem.Choices.Select(c => c.Id), "choices");
        RequireDistinct(problem.Loops.Select(l => l.Id), "loops");
        foreach (var choice in problem.Choices.Where(c => c.Options.IsDefaultOrEmpty))
            throw new ArgumentException($"choices: {choice.Id} has no options.", nameof(problem));
        if (problem.Choices.SelectMany(c => c.Options).Any(o => o.Cost < 0 || o.Removed < Length.Zero))
            throw new ArgumentException("choices: a cost and metal removed are not negative.", nameof(problem));
        var known = problem.Choices.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var loop in problem.Loops)
            RequireLoop(loop, known);
    }

    private static void RequireLoop(SelectionLoop loop, HashSet<string> known)
    {
        if (!double.IsFinite(loop.StandardUncertainty) || loop.StandardUncertainty < 0)
            throw new ArgumentException($"loops: the standard uncertainty of {loop.Id} is not a number of metres.", nameof(loop));
        if (loop.GuardedLow is null && loop.GuardedHigh is null)
            throw new ArgumentException($"loops: {loop.Id} has no window.", nameof(loop));
        foreach (var term in loop.Terms)
        {
            if (term.Numerator == 0 || term.Denominator <= 0)
                throw new ArgumentException($"loops: {loop.Id} has a coefficient of {term.Numerator}/{term.Denominator}.", nameof(loop));
            if (!known.Contains(term.Choice))
                throw new ArgumentException($"loops: {loop.Id} names {term.Choice}, which is not a choice.", nameof(loop));
        }
    }

    private static void RequireDistinct(IEnumerable<string> ids, string list)
    {
        if (ids.GroupBy(i => i, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"{list}: {twice.Key} stands there twice.", nameof(ids));
    }
}
