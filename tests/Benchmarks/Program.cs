using RebuildApi.Benchmarks;
using RebuildApi.Benchmarks.Http;

// The programs that others are compared with; a benchmark starts them.
if (args is ["bare", var file, var there])
    Bare.RunBare(file, there);
if (args is ["empty", var here])
    Bare.RunEmpty(here);

// Which to run: "selection", "planning", "measuring", "storage", "diagnosis", "judging", "engine", "checking", "answering" or "growth"; all when nothing is said.
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
if (wanted is null or "checking")
    await CheckingBenchmark.Run(Console.Out);
if (wanted is null or "answering")
    await AnsweringBenchmark.Run(Console.Out);
if (wanted is null or "engine")
    EngineBenchmarks.Run(Console.Out);
if (wanted is null or "growth")
    await GrowthBenchmark.Run(Console.Out);
