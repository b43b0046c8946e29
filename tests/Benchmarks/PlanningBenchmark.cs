using System.Globalization;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Benchmarks;

/// <summary>
/// Times whole plans and allocations beside a direct model in a general constraint solver, in one run on one core, answers compared. Processor time is
/// counted, not the clock on the wall, so that what else the machine does falls on neither.
/// </summary>
internal static class PlanningBenchmark
{
    private const int Instances = 30;
    private static readonly BranchAndBound s_solver = new();

    public static void Run(TextWriter output)
    {
        var plans = Enumerable.Range(1, Instances).Select(PlanInstances.SixtyByFive).ToArray();
        for (var warmUp = 0; warmUp < 3; warmUp++)
            _ = (Ours(plans[warmUp]), PlanConstraintSolver.Cost(plans[warmUp]));
        Compare(output, "plans of 60 places x 5 candidates x 150 pairings", plans, Ours, PlanConstraintSolver.Cost);
        NoPlanBenchmark.Run(output);
        var shelves = Enumerable.Range(1, 5).Select(seed => PlanInstances.Shelf(seed, 40, 2000, 20)).ToArray();
        for (var warmUp = 0; warmUp < 20; warmUp++)
            _ = Allocator.Allocate(shelves[warmUp % shelves.Length]);
        Compare(output, "40 units x 5 places x 2,000 parts, 20 nearest each", shelves, s => Allocator.Allocate(s).Cost, PlanConstraintSolver.Cost);
        foreach (var scarce in Enumerable.Range(1, 3).Select(seed => PlanInstances.Shelf(seed, 40, 190, 6)))
            MostUnits(output, scarce);
    }

    private static long Ours(PlanProblem problem) => s_solver.Solve(problem, new PlanEffort(long.MaxValue)).Cost;

    private static void Compare<T>(TextWriter output, string name, T[] instances, Func<T, long> ours, Func<T, long> theirs)
    {
        var mine = instances.Select(i => Timed(ours, i)).ToArray();
        var other = instances.Select(i => Timed(theirs, i)).ToArray();
        var equal = mine.Zip(other).Count(x => x.First.Answer == x.Second.Answer);
        Line(output, $"{name}: solver", mine);
        Line(output, $"{name}: CP-SAT", other);
        var (m, o) = (mine.Select(x => x.Milliseconds).Order().ToArray(), other.Select(x => x.Milliseconds).Order().ToArray());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  CP-SAT takes {o[o.Length / 2] / m[m.Length / 2]:0.0} times the median and {o[^1] / m[^1]:0.0} times the worst; equal optimum {equal} of {instances.Length}"));
    }

    private static void MostUnits(TextWriter output, AllocationProblem scarce)
    {
        var mine = Timed(s => Allocator.Allocate(s).Completed.Length, scarce);
        var other = Timed(PlanConstraintSolver.MostUnits, scarce);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"scarce shelf, 40 units: {mine.Answer} completed, bound {Allocator.Allocate(scarce).MostUnits}, {mine.Milliseconds:0} ms; CP-SAT {other.Answer}, {other.Milliseconds:0} ms"));
    }

    internal static (double Milliseconds, long Answer) Timed<T>(Func<T, long> solve, T instance)
    {
        var before = Environment.CpuUsage.TotalTime;
        var answer = solve(instance);
        return ((Environment.CpuUsage.TotalTime - before).TotalMilliseconds, answer);
    }

    private static void Line(TextWriter output, string name, (double Milliseconds, long Answer)[] times)
    {
        var sorted = times.Select(t => t.Milliseconds).Order().ToArray();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: median {sorted[sorted.Length / 2]:0.00} ms, worst {sorted[^1]:0.00} ms"));
    }
}
