using System.Collections.Immutable;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Engine.Planning;

/// <summary>What is the best complete set of decisions for a unit? Every place, pairing, set, clearance, ring and cut at once.</summary>
public static class UnitPlanner
{
    private const string Rule = "plan";

    /// <summary>The best plan by one objective, with what else would do and what to measure; or why there is none and what would unlock it.</summary>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="request">Candidates, prices, objective and limits.</param>
    /// <param name="hooks">The family's rules in code.</param>
    /// <param name="solver">What solves it; the house's own when none is given.</param>
    /// <param name="cancellation">Stops it; the best found by then is returned with its gap.</param>
    /// <exception cref="ArgumentException">A rate, a chance or a candidate of the request is no such thing; the field is named.</exception>
    public static PlanAnswer Plan(EstimateBook book, PlanRequest request, IHooks hooks, IPlanSolver? solver = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(book);
        RequestCheck.Require(request, book.View.Family);
        solver ??= new BranchAndBound();
        var (finder, found, model) = Search(book, request, hooks, solver, cancellation);
        if (!found.Solution.Exists)
            return None(found, model, finder, solver, cancellation);
        var alternatives = new Alternatives(model, finder, found);
        return new PlanAnswer(
            found.Solution.Status, new PlanWriter(model).Write(found, request.Objective, alternatives.NextBest), [], [], alternatives.ToMeasure(), []);
    }

    /// <summary>Plans between the cheapest and the surest, none of which is beaten in both cost and risk; the cheapest first.</summary>
    /// <param name="book">What is known of the unit.</param>
    /// <param name="request">Candidates, prices and limits; its objective is not asked.</param>
    /// <param name="hooks">The family's rules in code.</param>
    /// <param name="most">Most plans to list.</param>
    /// <param name="solver">What solves it; the house's own when none is given.</param>
    /// <param name="cancellation">Stops it; the best found by then are returned with their gaps.</param>
    /// <exception cref="ArgumentException">A rate, a chance or a candidate of the request is no such thing; the field is named.</exception>
    public static ImmutableArray<Plan> Front(
        EstimateBook book, PlanRequest request, IHooks hooks, int most = 5, IPlanSolver? solver = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(book);
        RequestCheck.Require(request, book.View.Family);
        var (finder, found, model) = Search(book, request with { Objective = PlanObjective.LeastCost }, hooks, solver ?? new BranchAndBound(), cancellation);
        return found.Solution.Exists
            ? [.. new TradeOff(model, finder).Front(most).Select(f => new PlanWriter(model).Write(f, PlanObjective.LeastCost, _ => null))]
            : [];
    }

    private static PlanAnswer None(FoundPlan found, PlanModel model, PlanFinder finder, IPlanSolver solver, CancellationToken cancellation)
    {
        if (found.Solution.Status != SolveStatus.Impossible)
            return new PlanAnswer(found.Solution.Status, null, [], [], [], [Because.Of("plan-not-found-in-time", Rule)]);
        var conflicts = new Conflicts(model, finder, solver, cancellation);
        var cores = model.Empty.IsEmpty ? conflicts.Find() : [];
        return new PlanAnswer(
            SolveStatus.Impossible, null, conflicts.Written(cores), new Unlocking(model, finder, solver, cancellation).Of(cores), [], [Because.Of("plan-none", Rule)]);
    }

    /// <summary>Without cuts first, where cuts are for when nothing else helps.</summary>
    private static (PlanFinder Finder, FoundPlan Found, PlanModel Model) Search(EstimateBook book, PlanRequest request, IHooks hooks, IPlanSolver solver, CancellationToken cancellation)
    {
        var model = new PlanModel(book, request, hooks, cuts: request.Cuts == CutUse.Always);
        var finder = new PlanFinder(model, solver, cancellation);
        var found = finder.Find(request.Objective);
        if (found.Solution.Status != SolveStatus.Impossible || request.Cuts != CutUse.WhenNeeded)
            return (finder, found, model);
        var wider = new PlanModel(book, request, hooks, cuts: true, model);
        var again = new PlanFinder(wider, solver, cancellation);
        return (again, again.Find(request.Objective), wider);
    }
}
