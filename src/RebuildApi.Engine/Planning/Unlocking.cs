using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;

namespace RebuildApi.Engine.Planning;

/// <summary>Single things after which there is a plan: each was tried on the whole problem.</summary>
internal sealed class Unlocking(PlanModel model, PlanFinder finder, IPlanSolver solver, CancellationToken cancellation)
{
    private readonly PlanProblem _problem = finder.Problem();

    /// <summary>What would open the way out of the conflicts, cheapest first.</summary>
    public ImmutableArray<PlanUnlock> Of(ImmutableArray<ImmutableArray<string>> cores)
    {
        if (!model.Empty.IsEmpty)
            return model.Empty.Length > 1 ? [] : [new PlanUnlock(UnlockKind.Purchase, model.Empty[0].Subject, 0, Because.Of("unlock-something-there", model.Empty[0].Subject))];
        var names = cores.SelectMany(c => c).ToHashSet(StringComparer.Ordinal);
        var places = _problem.Tables.Where(t => names.Contains(t.Demand)).SelectMany(t => t.Choices)
            .Concat(_problem.Sums.Where(s => names.Contains(s.Demand)).SelectMany(s => s.Terms.Select(t => t.Choice))).Distinct().Order();
        return
        [
            .. names.Where(n => model.Demands[n].Kind is DemandKind.Limit or DemandKind.Stock).Order(StringComparer.Ordinal).Select(Relaxed)
                .Concat(places.Select(p => Purchase(p, names)))
                .OfType<PlanUnlock>()
                .OrderBy(u => u.Cost).ThenBy(u => u.Subject, StringComparer.Ordinal),
        ];
    }

    private PlanUnlock? Relaxed(string name)
    {
        var demand = model.Demands[name];
        var solution = Solve(ConflictSearch.Under(_problem, n => n != name));
        if (!solution.Exists)
            return null;
        var (what, code) = demand.Kind == DemandKind.Stock ? (UnlockKind.Purchase, "unlock-more-of-it")
            : name.StartsWith("limit:proven:", StringComparison.Ordinal) ? (UnlockKind.Measurement, "unlock-prove-it")
            : (UnlockKind.RelaxedLimit, "unlock-relax");
        return new PlanUnlock(what, demand.Id, solution.Cost, Because.Of(code, demand.Id, ("demand", ReasonText.Words(demand.Reason))));
    }

    /// <summary>A part that meets everything: when even that does not help, no purchase for this place does.</summary>
    private PlanUnlock? Purchase(int place, HashSet<string> conflicting)
    {
        var wider = PerfectPart.At(place, _problem);
        var solution = Solve(wider);
        if (!solution.Exists)
            return null;
        var subject = model.Places[place].Subject;
        var meets = conflicting.Where(n => _problem.Tables.Any(t => t.Demand == n && t.Choices.Contains(place)) || _problem.Sums.Any(s => s.Demand == n && s.Terms.Any(t => t.Choice == place)));
        return new PlanUnlock(
            UnlockKind.Purchase, subject, solution.Cost,
            Because.Of("unlock-purchase", subject, ("meets", string.Join(" ", meets.Order(StringComparer.Ordinal).Select(n => $"{model.Demands[n].Id}: {ReasonText.Words(model.Demands[n].Reason)}")))));
    }

    private PlanSolution Solve(PlanProblem problem) => solver.Solve(problem, model.Request.Effort, cancellation);
}

/// <summary>Adds to one choice an option that costs nothing and meets every demand.</summary>
internal static class PerfectPart
{
    public static PlanProblem At(int place, PlanProblem problem) => problem with
    {
        Choices = problem.Choices.SetItem(place, problem.Choices[place] with { Costs = problem.Choices[place].Costs.Add(0) }),
        Tables = [.. problem.Tables.Select(t => t.Choices.Contains(place) ? Widened(t, place, problem) : t)],
        Sums = [.. problem.Sums.Select(s => s with { Terms = [.. s.Terms.Select(t => t.Choice == place ? Widened(t) : t)] })],
    };

    private static PlanTerm Widened(PlanTerm term) =>
        new(term.Choice, term.Amounts.Add(null), term.Variances.IsDefaultOrEmpty ? [] : term.Variances.Add(0));

    private static PlanTable Widened(PlanTable table, int place, PlanProblem problem)
    {
        var at = table.Choices.IndexOf(place);
        var inner = table.Choices.Skip(at + 1).Aggregate(1, (n, c) => n * problem.Choices[c].Costs.Length);
        var block = inner * problem.Choices[place].Costs.Length;
        return table with { Costs = [.. table.Costs.Chunk(block).SelectMany(b => b.Concat(Enumerable.Repeat(0L, inner)))] };
    }
}
