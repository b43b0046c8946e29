using System.Collections.Immutable;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// Finds the best plan of a model. What tables and sums can't say (few readings, rules over too many combinations, a trial assembly) is judged on the
/// plan that comes out; a plan that does not stand is forbidden and the next best sought, so that what is returned stands as it is and nothing that was
/// passed over could have stood.
/// </summary>
internal sealed class PlanFinder(PlanModel model, IPlanSolver solver, CancellationToken cancellation)
{
    /// <summary>Plans that are judged before it gives up.</summary>
    private const int MostRounds = 60;

    private readonly List<PlanSum> _forbidden = [];

    /// <summary>The best plan by an objective, for which soonest ready is sought day by day.</summary>
    public FoundPlan Find(PlanObjective objective)
    {
        if (!model.Empty.IsEmpty)
            return new FoundPlan(new PlanSolution(SolveStatus.Impossible, [], 0, 0, 0), [], new Weighing(1, 1, 0));
        var weighing = Weighing.Of(objective, model);
        if (IsTooDear(weighing))
            return new FoundPlan(new PlanSolution(SolveStatus.Impossible, [], 0, 0, 0), [], weighing);
        if (objective != PlanObjective.SoonestReady)
            return Find(weighing, []);
        var days = model.Places.SelectMany(p => p.Fits).Select(f => f.LeadDays).Distinct().Order().ToArray();
        var (low, high) = (0, days.Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Find(weighing with { MostDays = days[middle] }, []).Solution.Exists)
                high = middle;
            else
                low = middle + 1;
        }

        return Find(weighing with { MostDays = days[low] }, []);
    }

    /// <summary>Whether even the cheapest of all costs more than may be spent: that shows at once, where a search under the limit would go through everything.</summary>
    private bool IsTooDear(Weighing weighing) =>
        model.Request.Limits.MostCost is not null && Feasibility.Of(weighing.Problem(model, _forbidden), solver, model.Request.Effort, cancellation).Fits == false;

    /// <summary>The best plan by weights, under more tables.</summary>
    public FoundPlan Find(Weighing weighing, IReadOnlyCollection<PlanTable> more)
    {
        for (var round = 0; ; round++)
        {
            var plain = weighing.Problem(model, _forbidden);
            var problem = plain with { Tables = [.. plain.Tables, .. more] };
            var solution = solver.Solve(problem, model.Request.Effort, cancellation);
            if (!solution.Exists)
                return new FoundPlan(solution, [], weighing);
            var picks = PieceSettling.Settle(model, problem, solution);
            var faults = model.Faults.Of(picks);
            if (faults.IsEmpty)
                return new FoundPlan(solution, picks, weighing);
            if (round == MostRounds)
                return new FoundPlan(solution with { Status = SolveStatus.Unknown, Picks = [] }, [], weighing);
            _forbidden.AddRange(faults.Select(f => Forbid(f, picks)));
        }
    }

    /// <summary>The problem by its objective, with what was found not to stand.</summary>
    public PlanProblem Problem() => Weighing.Of(PlanObjective.LeastCost, model).Problem(model, _forbidden);

    /// <summary>These options together may not be: of n indicators at most n − 1.</summary>
    private PlanSum Forbid(PlanFault fault, ImmutableArray<int> picks) => new(
        fault.Demand, long.MinValue, fault.Places.Length - 1,
        [.. fault.Places.Select(p => new PlanTerm(p, [.. model.Places[p].Fits.Select((_, o) => (long?)(o == picks[p] ? 1 : 0))], []))]);
}

/// <summary>A plan in numbers; no picks when there is none.</summary>
internal sealed record FoundPlan(PlanSolution Solution, ImmutableArray<int> Picks, Weighing Weighing);

/// <summary>Something in a plan that does not stand, and the places whose parts make it so.</summary>
internal sealed record PlanFault(string Demand, ImmutableArray<int> Places);
