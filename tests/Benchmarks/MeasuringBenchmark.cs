using System.Diagnostics;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Benchmarks;

/// <summary>
/// Times random numbers beside plain loops over System.Random, in one run on one core, and the verdicts of a whole unit with full budgets.
/// The shortest of many short runs counts, since anything else that runs on the machine only lengthens them.
/// </summary>
internal static class MeasuringBenchmark
{
    /// <summary>As long as the blocks of the propagation.</summary>
    private const int BlockLength = 1024;
    private const int Blocks = 400;
    private const int Runs = 200;

    /// <summary>Rounds before the one that is printed, so that everything is timed as compiled for good.</summary>
    private const int WarmUps = 2;

    public static void Run(TextWriter output)
    {
        for (var round = 0; round < WarmUps; round++)
            Round(TextWriter.Null);
        Round(output);
    }

    private static void Round(TextWriter output)
    {
        var block = new double[BlockLength];
        var stream = new UniformStream(1, 1);
        var (plain, seeded) = (new Random(), new Random(1));
        var uniform = PerNumber(() => stream.Fill(block));
        var normal = PerNumber(() =>
        {
            stream.Fill(block);
            NormalNumbers.FromUniforms(block);
        });
        Ratio(output, "uniform numbers", uniform, "System.Random", PerNumber(() => PlainUniforms(plain, block)));
        Ratio(output, "uniform numbers", uniform, "System.Random with a seed", PerNumber(() => PlainUniforms(seeded, block)));
        Ratio(output, "normal numbers", normal, "Box-Muller over System.Random", PerNumber(() => PlainNormals(plain, block)));
        Ratio(output, "normal numbers", normal, "Box-Muller over System.Random with a seed", PerNumber(() => PlainNormals(seeded, block)));
        WholeUnit(output);
    }

    private static void PlainUniforms(Random random, double[] block)
    {
        for (var i = 0; i < block.Length; i++)
            block[i] = random.NextDouble();
    }

    private static void PlainNormals(Random random, double[] block)
    {
        for (var i = 0; i < block.Length; i += 2)
        {
            var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            var angle = 2 * Math.PI * random.NextDouble();
            block[i] = radius * Math.Cos(angle);
            block[i + 1] = radius * Math.Sin(angle);
        }
    }

    private static double PerNumber(Action fill) => 1e9 / (BlockLength * Blocks) * Enumerable.Range(0, Runs).Min(_ =>
    {
        var clock = Stopwatch.StartNew();
        for (var i = 0; i < Blocks; i++)
            fill();
        return clock.Elapsed.TotalSeconds;
    });

    private static void Ratio(TextWriter output, string ours, double nanoseconds, string theirs, double theirNanoseconds) => output.WriteLine(
        FormattableString.Invariant($"{ours}: {nanoseconds:F3} ns; {theirs}: {theirNanoseconds:F2} ns, {theirNanoseconds / nanoseconds:F1} times as long"));

    /// <summary>60 characteristics, five readings each.</summary>
    private static void WholeUnit(TextWriter output)
    {
        var family = Enumerable.Range(1, 60).Aggregate(
            FamilyBuilder.Named(), (b, i) => b.Part(FormattableString.Invariant($"part-{i}"), FamilyBuilder.LengthOf("width", 9.99m, 10.01m, readings: 3))).Family;
        var snapshot = family.Positions.Aggregate(
            SnapshotBuilder.Complete(family).Micrometer(), (b, p) => b.Reads(p.Id, "width", "mic-1", 9.991m, 9.993m, 9.992m, 9.990m, 9.994m)).Snapshot;
        var index = new FamilyIndex(family);
        var seconds = Enumerable.Range(0, Runs).Min(_ =>
        {
            var clock = Stopwatch.StartNew();
            var view = new UnitView(snapshot, index);
            var book = new EstimateBook(view);
            foreach (var position in family.Positions)
                CharacteristicJudge.Judge(view.FirstAt(position.Id)!, index.KindAt(position.Id)!.Characteristics[0], book);
            return clock.Elapsed.TotalSeconds;
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"verdicts of a unit of 60 characteristics, full budgets: {1000 * seconds:F2} ms"));
    }
}
