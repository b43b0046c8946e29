using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Conformity;

/// <summary>
/// What would settle an inconclusive verdict. Each step is tried some thousand times on values that the present readings allow: a true value
/// and a scatter are drawn, the new readings are drawn from them and rounded as the instrument rounds, and the verdict is made again by the
/// very rule that will make it.
/// </summary>
public static class Settling
{
    private const int Tries = 2000;
    private static readonly ImmutableArray<int> MoreReadings = [1, 2, 3, 5, 8, 12];

    /// <summary>The steps that may settle a verdict, cheapest first: fewest readings, and the instrument at hand before another.</summary>
    /// <param name="placed">The part.</param>
    /// <param name="characteristic">The characteristic.</param>
    /// <param name="book">The unit.</param>
    /// <param name="seed">The same seed gives the same answer.</param>
    /// <returns>Empty when the verdict is not inconclusive, or rests on bounds.</returns>
    public static ImmutableArray<SettlingStep> Steps(PlacedComponent placed, Characteristic characteristic, EstimateBook book, ulong seed = 1)
    {
        if (CharacteristicJudge.Judge(placed, characteristic, book) is not { Outcome: Outcome.Inconclusive, Against: { } limits, Value: { Value: not null } value })
            return [];
        var readings = book.SetOf(placed, characteristic);
        if (readings.Values.IsEmpty)
            return [];
        var trial = new SettlingTrial(readings, value, limits, book.View.Snapshot.Policy.For(characteristic.Criticality));
        IEnumerable<SettlingStep> more = characteristic.Report == Statistic.Mean && readings.Values.Length > 1
            ? MoreReadings.Select(n => new SettlingStep("more-readings", null, n, Tried(trial, t => t.WithMore(n), seed)))
            : [];
        var count = Math.Max(1, Math.Max(readings.Values.Length, characteristic.MinimumReadings));
        var others = Others(characteristic, readings, book.View)
            .Select(i => new SettlingStep("other-instrument", i.Id, count, Tried(trial, t => t.WithOther(i, count), seed)));
        return [.. more.Concat(others).OrderBy(s => s.Readings).ThenBy(s => s.Instrument is null ? 0 : 1).ThenBy(s => s.Instrument, StringComparer.Ordinal)];
    }

    /// <summary>The first of the steps, cheapest first, that settles at least the share wanted; else the one that settles most; null when there is none.</summary>
    public static SettlingStep? Cheapest(ImmutableArray<SettlingStep> steps, double wanted = 0.8) =>
        steps.FirstOrDefault(s => s.Settles.Value >= wanted) ?? steps.Where(s => s.Settles.Hits > 0).MaxBy(s => s.Settles.Value);

    /// <summary>Instruments of the snapshot that are not in use here, are of a type that the family asks for, and say how wrong they may be.</summary>
    private static IEnumerable<InstrumentState> Others(Characteristic characteristic, ReadingSet readings, UnitView view)
    {
        var inUse = readings.Values.Select(v => v.InstrumentId).ToHashSet(StringComparer.Ordinal);
        var newest = view.Snapshot.Measurements.Max(m => DateOnly.FromDateTime(m.Taken.At.UtcDateTime));
        return view.Snapshot.Instruments.Where(i =>
            !inUse.Contains(i.Id)
            && readings.Scale.Of(i.LimitOfError) is not null
            && readings.Values.All(v => !(v.Point < readings.Scale.Of(i.RangeLow)) && !(v.Point > readings.Scale.Of(i.RangeHigh)))
            && (characteristic.Methods.IsDefaultOrEmpty || characteristic.Methods.Contains(i.Type))
            && !(i.CalibrationDue < newest));
    }

    private static Share Tried(SettlingTrial trial, Func<SettlingTrial, Func<NormalSource, Outcome>> step, ulong seed)
    {
        var source = new NormalSource(seed);
        var judge = step(trial);
        var settled = Enumerable.Range(0, Tries).Count(_ => judge(source) is Outcome.Conforming or Outcome.Nonconforming);
        return Share.Counted(settled, Tries);
    }
}
