using Google.OrTools.Sat;
using Google.OrTools.Util;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Benchmarks;

/// <summary>The same problem put to a general constraint solver on one core: the margin first, then the distance with the margin held.</summary>
internal static class ConstraintSolver
{
    public static (long Margin, long Distance) Best(SelectionProblem problem)
    {
        var margin = Solve(problem, null);
        return (margin, Solve(problem, margin));
    }

    private static long Solve(SelectionProblem problem, long? heldMargin)
    {
        var model = new CpModel();
        var amounts = problem.Choices.ToDictionary(c => c.Id, c => model.NewIntVarFromDomain(Domain.FromValues([.. c.Options.Select(o => o.Amount.Nanometres)]), c.Id));
        var margin = model.NewIntVar(-10_000_000, 10_000_000, "margin");
        var distances = new List<IntVar>();
        foreach (var loop in problem.Loops)
        {
            var gap = LinearExpr.Constant(loop.Without.Nanometres) - LinearExpr.Sum(loop.Terms.Select(t => amounts[t.Choice]));
            var u = (long)Math.Round(loop.StandardUncertainty * 1e9);
            model.Add(margin * u <= 100 * (gap - loop.GuardedLow!.Value.Nanometres));
            model.Add(margin * u <= 100 * (loop.GuardedHigh!.Value.Nanometres - gap));
            var distance = model.NewIntVar(0, 1_000_000_000, loop.Id);
            model.Add(distance >= gap - loop.Target.Nanometres);
            model.Add(distance >= loop.Target.Nanometres - gap);
            distances.Add(distance);
        }

        if (heldMargin is { } held)
        {
            model.Add(margin >= held);
            model.Minimize(LinearExpr.Sum(distances));
        }
        else
        {
            model.Maximize(margin);
        }

        var solver = new CpSolver { StringParameters = "num_workers:1" };
        var status = solver.Solve(model);
        return status == CpSolverStatus.Optimal ? (long)Math.Round(solver.ObjectiveValue) : throw new InvalidOperationException($"not proven: {status}");
    }
}
