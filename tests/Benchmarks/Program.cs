using RebuildApi.Benchmarks;

SelectionBenchmark.Run(Console.Out);
