using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Brackenmere4;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Identity;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Contracts;

namespace RebuildApi.Benchmarks;

/// <summary>What the engine does for every answer, timed with what it allocates: a whole unit judged, its characteristics alone as the measure, and the hash of its inputs.</summary>
[MemoryDiagnoser]
public class EngineBenchmarks
{
    private readonly FamilyIndex _index = new(new BrackenmerePlugin().Declare().Single());
    private readonly UnitSnapshot _snapshot;

    public EngineBenchmarks() => _snapshot = JudgingBenchmark.Mixed(_index.Family);

    /// <summary>Runs them within this process, so that nothing is fetched or built.</summary>
    public static void Run(TextWriter output)
    {
        var config = ManualConfig.CreateEmpty().AddColumnProvider(DefaultColumnProviders.Instance)
            .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance)).AddDiagnoser(BenchmarkDotNet.Diagnosers.MemoryDiagnoser.Default)
            .AddLogger(NullLogger.Instance).WithArtifactsPath(Path.Combine(Path.GetTempPath(), "rebuild-benchmarks"));
        foreach (var report in BenchmarkRunner.Run<EngineBenchmarks>(config).Reports)
        {
            var (mean, bytes) = (report.ResultStatistics!.Mean / 1e6, report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? 0);
            output.WriteLine(FormattableString.Invariant($"{report.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo}: {mean:F3} ms, {bytes / 1024.0:F0} KiB allocated"));
        }
    }

    [Benchmark(Baseline = true, Description = "its characteristics alone")]
    public void Characteristics() => JudgingBenchmark.Characteristics(_snapshot, _index);

    [Benchmark(Description = "a whole unit of mixed vintage")]
    public Judgement Whole() => UnitJudge.Judge(new UnitView(_snapshot, _index), new JudgingBenchmark.NoRulesInCode());

    [Benchmark(Description = "the hash of its inputs")]
    public string Hash() => Canonical.Sha256(_snapshot);
}
