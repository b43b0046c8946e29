using System.Collections.Immutable;
using System.Globalization;
using Brackenmere4;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Benchmarks;

/// <summary>Where there is no plan: how long it takes to say what stands in the way and what would unlock it, against finding out that there is none.</summary>
internal static class NoPlanBenchmark
{
    private const int Instances = 30;
    private static readonly BranchAndBound s_solver = new();

    public static void Run(TextWriter output)
    {
        Unit(output);
        Instance(output);
    }

    /// <summary>A whole unit of mixed vintage without a part to change: many gears do not run in their sleeves.</summary>
    private static void Unit(TextWriter output)
    {
        var family = new BrackenmerePlugin().Declare().Single();
        var (index, snapshot) = (new FamilyIndex(family), JudgingBenchmark.Mixed(family));
        var hooks = new JudgingBenchmark.NoRulesInCode();
        var answer = UnitPlanner.Plan(Book(), new PlanRequest(), hooks);
        if (answer.Status != SolveStatus.Impossible)
            throw new InvalidOperationException("The unit that is to have no plan has one.");
        var alone = Median(() => PlanningBenchmark.Timed(_ => UnitPlanner.Front(Book(), new PlanRequest(), hooks, most: 1).Length, 0).Milliseconds);
        var whole = Median(() => PlanningBenchmark.Timed(_ => UnitPlanner.Plan(Book(), new PlanRequest(), hooks).Unlocks.Length, 0).Milliseconds);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"a unit without a plan, {answer.Conflicts.Length} conflicts, {answer.Unlocks.Length} unlocks: {whole:0} ms; finding that there is none: {alone:0} ms, so {whole / alone:0.0} times as long"));

        EstimateBook Book() => new(new UnitView(snapshot, index));
    }

    /// <summary>Random plans of sixty places of which nothing fits, since pairings forbid more: the smallest conflicting set against one solve.</summary>
    private static void Instance(TextWriter output)
    {
        var plans = Enumerable.Range(1, 10 * Instances).Select(seed => PlanInstances.SixtyByFive(seed, inTen: 6)).Where(p => Solved(p).Answer == 0).Take(Instances).ToArray();
        var times = plans.Select(p => (Solve: Solved(p).Milliseconds, Conflict: PlanningBenchmark.Timed(x => Conflicts(x).Length, p))).ToArray();
        var smallest = plans.Count(p => Conflicts(p) is [{ IsSmallest: true }, ..]);
        var (solve, conflict) = (At(times.Select(t => t.Solve)), At(times.Select(t => t.Conflict.Milliseconds)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"60 places x 5 candidates x 150 pairings without a plan, {plans.Length} instances: conflicts median {conflict.Median:0.0} ms, worst {conflict.Worst:0.0} ms; one solve {solve.Median:0.0} ms, worst {solve.Worst:0.0} ms: {conflict.Median / solve.Median:0.0} times; smallest proven {smallest} of {plans.Length}"));
    }

    private static (double Milliseconds, long Answer) Solved(PlanProblem problem) => PlanningBenchmark.Timed(p => s_solver.Solve(p, new PlanEffort(long.MaxValue)).Exists ? 1 : 0, problem);

    private static ImmutableArray<FoundConflict> Conflicts(PlanProblem problem) => ConflictSearch.Find(problem, s_solver, new PlanEffort(100_000));

    private static double Median(Func<double> run) => At(Enumerable.Range(0, 5).Select(_ => run())).Median;

    private static (double Median, double Worst) At(IEnumerable<double> times)
    {
        var sorted = times.Order().ToArray();
        return (sorted[sorted.Length / 2], sorted[^1]);
    }
}
