using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>Single things after which there is a plan: each was tried on the whole problem.</summary>
internal sealed class Unlocking(PlanModel model, PlanFinder finder, IPlanSolver solver, CancellationToken cancellation)
{
    private const long MostSteps = 20_000;

    private readonly PlanProblem _problem = finder.Problem();
    private readonly PlanEffort _effort = new(Math.Min(MostSteps, model.Request.Effort.MostSteps));

    /// <summary>What would open the way out of the conflicts, cheapest first.</summary>
    public ImmutableArray<PlanUnlock> Of(ImmutableArray<FoundConflict> cores)
    {
        if (!model.Empty.IsEmpty)
            return model.Empty.Length > 1 ? [] : [new PlanUnlock(UnlockKind.Purchase, model.Empty[0].Subject, 0, Because.Of("unlock-something-there", model.Empty[0].Subject))];
        var names = cores.SelectMany(c => c.Demands).ToHashSet(StringComparer.Ordinal);
        var places = _problem.Tables.Where(t => names.Contains(t.Demand)).SelectMany(t => t.Choices)
            .Concat(_problem.Sums.Where(s => names.Contains(s.Demand)).SelectMany(s => s.Terms.Select(t => t.Choice))).Distinct().Order();
        return
        [
            .. names.Where(n => model.Demands[n].Kind is DemandKind.Limit or DemandKind.Stock).Order(StringComparer.Ordinal).Select(Relaxed)
                .Concat(places.Where(Helps).Select(Purchase)).Append(model.Request.Cuts == CutUse.Never ? Worked() : null)
                .OfType<PlanUnlock>()
                .Concat(new UnlockingReadings(model, solver, _effort, cancellation).Of(names, places))
                .OrderBy(u => u.Cost).ThenBy(u => u.Subject, StringComparer.Ordinal),
        ];
    }

    /// <summary>Whether a part that costs nothing and meets everything would open the way; where it would not, no part that can be bought does.</summary>
    private bool Helps(int place) => Feasibility.Of(PerfectPart.At(place, _problem), solver, _effort, cancellation).Fits == true;

    /// <summary>Cuts of parts found, where the request leaves them out.</summary>
    private PlanUnlock? Worked()
    {
        if (cancellation.IsCancellationRequested)
            return null;
        var wider = new PlanModel(model.Book, model.Request with { Cuts = CutUse.Always, Objective = PlanObjective.LeastCost }, model.Hooks, cuts: true, model);
        var found = new PlanFinder(wider, solver, cancellation).Find(PlanObjective.LeastCost);
        var cut = found.Solution.Exists ? wider.Places.Where((p, i) => p.Fits[found.Picks[i]].JudgedAs is not null && p.Series is null).ToArray() : [];
        return cut.Length == 0 ? null : new PlanUnlock(
            UnlockKind.Rework, cut[0].Subject, found.Solution.Cost + model.BenchLabour,
            Because.Of("unlock-rework", cut[0].Subject, ("what", string.Join(", ", cut.Select(p => p.Subject)))));
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
        return new PlanUnlock(what, demand.Id, solution.Cost + model.BenchLabour, Because.Of(code, demand.Id, ("demand", model.Book.View.Family.Say(demand.Reason))));
    }

    /// <summary>
    /// A new part for a place: like the one that came in, or with one of its attributes another. Each is judged like any candidate, with all that it would
    /// run with; for a selective piece, one of the thickness that is missing.
    /// </summary>
    private PlanUnlock? Purchase(int place)
    {
        var of = model.Places[place];
        if (of.Series is not null)
            return Solve(PerfectPart.At(place, _problem)) is { Exists: true } piece
                ? new PlanUnlock(UnlockKind.Purchase, of.Subject, piece.Cost + model.BenchLabour, Because.Of("unlock-piece", of.Subject, ("series", of.Series)))
                : null;
        if (cancellation.IsCancellationRequested)
            return null;
        var variants = Variants.Of(of, model.Book);
        var request = model.Request with { Objective = PlanObjective.LeastCost, Effort = _effort, Candidates = [.. model.Request.Candidates, .. variants] };
        var wider = new PlanModel(model.Book, request, model.Hooks, cuts: model.Cuts, model);
        var found = new PlanFinder(wider, solver, cancellation).Find(PlanObjective.LeastCost);
        if (!found.Solution.Exists)
            return null;
        var at = wider.Places.IndexOf(wider.Places.First(p => p.Subject == of.Subject));
        return variants.FirstOrDefault(v => v.Id == wider.Places[at].Fits[found.Picks[at]].Id) is { } bought
            ? new PlanUnlock(UnlockKind.Purchase, of.Subject, found.Solution.Cost + model.BenchLabour, Because.Of("unlock-purchase", of.Subject, ("what", bought.Part.Component.Label ?? bought.Id)))
            : null;
    }

    private PlanSolution Solve(PlanProblem problem) => solver.Solve(problem, _effort, cancellation);
}

/// <summary>New parts that could be asked for: as the one that came in, and with each of its attributes another.</summary>
internal static class Variants
{
    public static ImmutableArray<PlanCandidate> Of(PlanPlace place, EstimateBook book)
    {
        var kind = book.View.Family.Kinds[place.Position.Kind];
        var there = book.View.At(place.Position.Id).FirstOrDefault(p => p.Placement.Index == place.Index);
        var known = kind.Attributes.Select(a => (a.Id, Value: there is null ? null : book.View.AttributeOf(there.Component, a.Id)))
            .Where(a => a.Value is not null).ToImmutableSortedDictionary(a => a.Id, a => a.Value!, StringComparer.Ordinal);
        var others = kind.Attributes.SelectMany(a => a.Values.Where(v => known.GetValueOrDefault(a.Id) != v.Id).Select(v => (Name: $"{a.Id} {v.Id}", Known: known.SetItem(a.Id, v.Id))));
        return [.. others.Prepend(("new", known)).Select(v => Candidate(place, v.Item1, v.Item2))];
    }

    private static PlanCandidate Candidate(PlanPlace place, string what, ImmutableSortedDictionary<string, string> known) => new(
        $"wanted-{place.Subject}-{what}", PartSource.Catalogue,
        Pairings.Candidate.Of(new Component($"wanted-{what}", 1, place.Position.Kind, Origin.New, known, what)), 0, 0, null, null)
    { Positions = [place.Position.Id] };
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
