using Google.OrTools.Sat;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Benchmarks;

/// <summary>The same plans and allocations put directly to a general constraint solver on one core.</summary>
internal static class PlanConstraintSolver
{
    private const double LongestProof = 60;
    private const double Unlimited = 1e9;

    public static long Cost(PlanProblem problem)
    {
        var model = new CpModel();
        var picks = problem.Choices.Select(c => c.Costs.Select((_, o) => model.NewBoolVar($"{c.Id}-{o}")).ToArray()).ToArray();
        foreach (var choice in picks)
            model.AddExactlyOne(choice);
        foreach (var table in problem.Tables)
        {
            var (first, second) = (picks[table.Choices[0]], picks[table.Choices[1]]);
            for (var i = 0; i < table.Costs.Length; i++)
            {
                if (table.Costs[i] == PlanTable.Forbidden)
                    model.AddBoolOr([first[i / second.Length].Not(), second[i % second.Length].Not()]);
            }
        }

        model.Minimize(LinearExpr.WeightedSum(picks.SelectMany(p => p), problem.Choices.SelectMany(c => c.Costs)));
        return Solve(model);
    }

    /// <summary>All units are completed at the least cost.</summary>
    public static long Cost(AllocationProblem problem)
    {
        var model = new CpModel();
        var taken = problem.Offers.Select((_, i) => model.NewBoolVar($"o{i}")).ToArray();
        foreach (var need in problem.Offers.Select((o, i) => (o, i)).GroupBy(x => (x.o.Unit, x.o.Place), x => taken[x.i]))
            model.AddExactlyOne(need);
        foreach (var part in problem.Offers.Select((o, i) => (o, i)).GroupBy(x => x.o.Part, x => taken[x.i]))
            model.AddAtMostOne(part);
        model.Minimize(LinearExpr.WeightedSum(taken, problem.Offers.Select(o => o.Cost)));
        return Solve(model);
    }

    /// <summary>The most units that can be completed; the most that were found when a minute does not suffice to prove it.</summary>
    public static long MostUnits(AllocationProblem problem)
    {
        var model = new CpModel();
        var taken = problem.Offers.Select((_, i) => model.NewBoolVar($"o{i}")).ToArray();
        var done = problem.Units.ToDictionary(u => u.Id, u => model.NewBoolVar(u.Id));
        foreach (var need in problem.Units.SelectMany(u => u.Needs.Select(n => (u.Id, n))))
            model.Add(LinearExpr.Sum(problem.Offers.Select((o, i) => (o, i)).Where(x => (x.o.Unit, x.o.Place) == need).Select(x => taken[x.i])) >= done[need.Id]);
        foreach (var part in problem.Offers.Select((o, i) => (o, i)).GroupBy(x => x.o.Part, x => taken[x.i]))
            model.AddAtMostOne(part);
        model.Maximize(LinearExpr.Sum(done.Values));
        return Solve(model, LongestProof);
    }

    private static long Solve(CpModel model, double seconds = Unlimited)
    {
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1,max_time_in_seconds:{seconds}") };
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal || (status is CpSolverStatus.Feasible && seconds == LongestProof) ? (long)Math.Round(solver.ObjectiveValue) : throw new InvalidOperationException($"not proven: {status}");
    }
}
