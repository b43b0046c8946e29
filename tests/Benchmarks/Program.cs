using RebuildApi.Benchmarks;

// Which to run: "selection" or "storage"; both when nothing is said.
var wanted = args.FirstOrDefault();
if (wanted is null or "selection")
    SelectionBenchmark.Run(Console.Out);
if (wanted is null or "storage")
    await StorageBenchmark.Run(Console.Out);
