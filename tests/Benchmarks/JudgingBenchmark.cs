using System.Collections.Immutable;
using System.Diagnostics;
using Brackenmere4;
using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Benchmarks;

/// <summary>
/// Times the judgement of a whole unit, worked out anew, beside a plain loop over its characteristics alone. Much of the unit is of mixed vintage, so
/// that most pairings are wrong and their cures are tried.
/// </summary>
internal static class JudgingBenchmark
{
    private const int WarmUps = 50;
    private const int Runs = 300;

    public static void Run(TextWriter output)
    {
        var family = new BrackenmerePlugin().Declare().Single();
        var (index, snapshot) = (new FamilyIndex(family), Mixed(family));
        var whole = Times(() => UnitJudge.Judge(new UnitView(snapshot, index), new NoRulesInCode()));
        var plain = Times(() => Characteristics(snapshot, index));
        var wrong = UnitJudge.Judge(new UnitView(snapshot, index), new NoRulesInCode()).Pairings.Count(p => p.Outcome == Compatibility.Incompatible);
        output.WriteLine(FormattableString.Invariant(
            $"judgement of a whole unit, {wrong} of {family.Pairings.Length} pairings wrong: median {At(whole, 0.5):F2} ms, p99 {At(whole, 0.99):F2} ms"));
        output.WriteLine(FormattableString.Invariant(
            $"plain loop over its characteristics: median {At(plain, 0.5):F2} ms, p99 {At(plain, 0.99):F2} ms; the whole takes {At(whole, 0.5) / At(plain, 0.5):F1} times as long"));
    }

    /// <summary>Each attribute as the first or the last of its list, turn about; each length read at the end of its limits.</summary>
    internal static UnitSnapshot Mixed(Family family)
    {
        var kinds = family.Kinds.ToDictionary(k => k.Id, StringComparer.Ordinal);
        var builder = SnapshotBuilder.Complete(family).Micrometer();
        foreach (var (position, turn) in family.Positions.Select((p, i) => (p, i)))
        {
            for (var index = 1; index <= position.Quantity; index++)
            {
                var part = position.Quantity == 1 ? position.Id : FormattableString.Invariant($"{position.Id}-{index}");
                builder = kinds[position.Kind].Attributes.Aggregate(
                    builder.Sees(part, new Sound()), (b, a) => b.Sees(part, new AttributeSeen(a.Id, a.Values[turn % 2 == 0 ? 0 : ^1].Id)));
                builder = kinds[position.Kind].Characteristics.Where(c => c.DerivedFrom is null && c.New?.Low is Exact).Aggregate(
                    builder, (b, c) => b.Reads(part, c.Id, "mic-1", [.. Enumerable.Repeat(Reading.Of(((Exact)c.New!.Low!).Value, "at the limit", "mm"), c.MinimumReadings)]));
            }
        }

        return builder.Snapshot;
    }

    internal static void Characteristics(UnitSnapshot snapshot, FamilyIndex family)
    {
        var view = new UnitView(snapshot, family);
        var book = new EstimateBook(view);
        foreach (var placed in family.Family.Positions.SelectMany(p => view.At(p.Id)))
        {
            foreach (var characteristic in family.Kinds[placed.Component.Kind].Characteristics)
                CharacteristicJudge.Judge(placed, characteristic, book);
        }
    }

    /// <summary>Milliseconds of each run, shortest first.</summary>
    private static double[] Times(Action run)
    {
        for (var i = 0; i < WarmUps; i++)
            run();
        return
        [
            .. Enumerable.Range(0, Runs).Select(_ =>
            {
                var clock = Stopwatch.StartNew();
                run();
                return clock.Elapsed.TotalMilliseconds;
            }).Order(),
        ];
    }

    private static double At(double[] times, double share) => times[(int)(share * (times.Length - 1))];

    internal sealed class NoRulesInCode : IHooks
    {
        public ImmutableArray<PairingVerdict> Run(HookScope scope, UnitSnapshot snapshot) => [];
    }
}
