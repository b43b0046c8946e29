using RebuildApi.Benchmarks;

// Which to run: "selection", "planning", "measuring", "storage", "diagnosis" or "judging"; all when nothing is said.
var wanted = args.FirstOrDefault();
if (wanted is null or "selection")
    SelectionBenchmark.Run(Console.Out);
if (wanted is null or "planning")
    PlanningBenchmark.Run(Console.Out);
if (wanted is null or "measuring")
    MeasuringBenchmark.Run(Console.Out);
if (wanted is null or "storage")
    await StorageBenchmark.Run(Console.Out);
if (wanted is null or "diagnosis")
    DiagnosisBenchmark.Run(Console.Out);
if (wanted is null or "judging")
    JudgingBenchmark.Run(Console.Out);
