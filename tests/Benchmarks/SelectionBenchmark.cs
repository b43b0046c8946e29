using System.Diagnostics;
using System.Globalization;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Benchmarks;

/// <summary>Times the choice of rings and cuts against plain enumeration and a general constraint solver, in one run on one core, answers compared.</summary>
internal static class SelectionBenchmark
{
    private const int Instances = 25;

    /// <summary>Calls before the clock runs, so that the solver is timed as compiled for good, as it is in a service that runs all day.</summary>
    private const int WarmUp = 200;

    public static void Run(TextWriter output)
    {
        var five = Enumerable.Range(1, Instances).Select(ClearanceInstances.FiveByTwelve).ToArray();
        var ours = Median(five, Ours);
        Line(output, "5 coupled loops x 12 sizes: solver", ours, ours);
        Line(output, "5 coupled loops x 12 sizes: plain enumeration", Median(five, PlainEnumeration.Best), ours);
        Line(output, "5 coupled loops x 12 sizes: CP-SAT", Median(five, ConstraintSolver.Best), ours);
        Large(output, "10 loops x 30 sizes, washers, 3 cuts", ClearanceInstances.TenByThirtyWithCuts);
        Large(output, "10 loops x 30 sizes, chain, 3 cuts", ClearanceInstances.ChainOfTenWithCuts);
    }

    private static void Large(TextWriter output, string name, Func<int, SelectionProblem> make)
    {
        var instances = Enumerable.Range(1, Instances).Select(make).ToArray();
        var ours = Median(instances, Ours);
        Line(output, $"{name}: solver", ours, ours);
        Line(output, $"{name}: CP-SAT, 3 instances", Median(instances[..3], ConstraintSolver.Best), ours);
    }

    private static (long Margin, long Distance) Ours(SelectionProblem problem)
    {
        var rank = SelectionSolver.Solve(problem).Best!.Rank;
        return (rank.Margin, rank.Distance);
    }

    /// <summary>Median of one timed call for each instance; the untimed calls before warm up and must come to the solver's margin and distance.</summary>
    private static double Median(SelectionProblem[] instances, Func<SelectionProblem, (long Margin, long Distance)> solve)
    {
        for (var call = 0; call < WarmUp && solve == Ours; call++)
            solve(instances[call % instances.Length]);
        foreach (var instance in instances)
        {
            if (solve(instance) != Ours(instance))
                throw new InvalidOperationException($"The answers differ: {solve(instance)} against {Ours(instance)}.");
        }

        var times = instances.Select(i => TimeOf(solve, i)).Order().ToArray();
        return times[times.Length / 2];
    }

    private static double TimeOf(Func<SelectionProblem, (long Margin, long Distance)> solve, SelectionProblem instance)
    {
        var clock = Stopwatch.StartNew();
        solve(instance);
        return clock.Elapsed.TotalMilliseconds;
    }

    private static void Line(TextWriter output, string name, double milliseconds, double than) =>
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: median {milliseconds:0.000} ms, {milliseconds / than:0.0} times the solver"));
}
