using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Units that between them come near every number of a family: at its limits, without readings, without pieces, warm, of the other form of teeth.</summary>
internal static class ProbeUnits
{
    private static readonly string[] s_gears = ["input-gear", "third-gear", "second-gear", "first-gear"];
    private static readonly string[] s_sleeves = ["sleeve-3-4", "sleeve-1-2"];

    public static ImmutableArray<Bench> Of(Bench sound)
    {
        var index = new FamilyIndex(sound.Family);
        var deciding = sound.Deciding();
        return
        [
            sound,
            At(deciding, (a, _) => index.ServiceLimitsAt(a)?.Low), At(deciding, (a, _) => index.ServiceLimitsAt(a)?.High),
            At(deciding, (a, _) => Beyond(index.NewLimitsAt(a)?.Low, -1)), At(deciding, (a, _) => Beyond(index.NewLimitsAt(a)?.High, 1)),
            Unread(sound), Emptied(sound), Emptied(Unread(sound)), Warm(sound), BackTapered(sound), WideSlots(sound), KeysSwapped(sound), ReadDirectly(sound),
        ];
    }

    /// <summary>The first piece of each series where one piece is chosen, then the second, and so on; not read, so that the member says how thick it is.</summary>
    public static ImmutableArray<Bench> WithEachPiece(Bench sound)
    {
        var places = sound.Family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>().Where(s => s.MaxPieces == 1).DistinctBy(s => s.Position).ToArray();
        var series = sound.Family.Series.ToDictionary(s => s.Id, s => s.Members, StringComparer.Ordinal);
        return
        [
            .. Enumerable.Range(0, series.Values.Max(m => m.Length)).Select(i =>
                places.Aggregate(sound, (b, s) => b.Takes(s.Position, series[s.Series][Math.Min(i, series[s.Series].Length - 1)].Id))),
        ];
    }

    /// <summary>Every characteristic that has such an end reads it, each time it is read.</summary>
    private static Bench At(Bench bench, Func<Address, Characteristic, Quantity?> end) => Reading(bench, (at, c) => c.DerivedFrom is null ? end(at, c) : null);

    /// <summary>A little past an end of the drawing.</summary>
    private static Quantity? Beyond(Quantity? end, int way) => end switch
    {
        Exact e => new Exact(new Length(Math.Max(0, e.Value.Nanometres + (way * 10_000)))),
        Real { Dimension: Dimension.Count } r => new Real(r.Si + way, r.Dimension),
        { } r => new Real(r.InSi * (1 + (way * 0.001)), r.Kind),
        null => null,
    };

    /// <summary>What follows from other dimensions is read by itself, once.</summary>
    private static Bench ReadDirectly(Bench bench) => Reading(bench, (_, c) => c.DerivedFrom is null ? null : Some(c.Dimension));

    private static Quantity Some(Dimension dimension) => dimension == Dimension.Length ? new Exact(Length.Millimetres(10)) : new Real(1, dimension);

    private static Bench Reading(Bench bench, Func<Address, Characteristic, Quantity?> value)
    {
        var kinds = bench.Family.Kinds.ToDictionary(k => k.Id, StringComparer.Ordinal);
        var all = from p in bench.Family.Positions
                  from c in kinds[p.Kind].Characteristics
                  let v = value(new Address(p.Id, c.Id), c)
                  where v is not null
                  from i in Enumerable.Range(1, p.Quantity)
                  select (At: $"{p.Id}/{c.Id}", Index: i, Readings: Times(c, v));
        return all.Aggregate(bench, (b, r) => b.Reads(r.At, r.Index, r.Readings));
    }

    private static ImmutableArray<Reading> Times(Characteristic c, Quantity value)
    {
        var zero = value is Exact ? (Quantity)new Exact(Length.Zero) : new Real(0, value.Kind);
        return [.. Enumerable.Range(0, c.MinimumReadings).Select(i => Gauges.Reading(c.Report == Statistic.Spread && i == 0 ? zero : value))];
    }

    private static Bench Unread(Bench bench) => bench with { Snapshot = bench.Snapshot with { Measurements = [] } };

    /// <summary>No piece is chosen anywhere.</summary>
    public static Bench Emptied(Bench bench) =>
        bench.Family.Loops.SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>().Select(s => s.Position).Distinct().Aggregate(bench, (b, p) => b.Empties(p));

    private static Bench Warm(Bench bench) => bench with
    {
        Snapshot = bench.Snapshot with { Measurements = [.. bench.Snapshot.Measurements.Select(m => m with { Taken = m.Taken with { Temperature = 303.15 } })] },
    };

    private static Bench BackTapered(Bench sound) => s_gears.Aggregate(
        s_sleeves.Aggregate(sound, (b, s) => b.Shows(s, "form", "back-tapered").ReadsDegrees(s + "/drive-flank-angle", 3.5, 3.5, 3.5)),
        (b, g) => b.Shows(g, "dog.form", "back-tapered").ReadsDegrees(g + "/dog.drive-flank-angle", 3.0, 3.0, 3.0));

    private static Bench KeysSwapped(Bench sound) => sound
        .EachReadsInches("keys-3-4", "length", 0.9100m).Shows("keys-3-4", "notch", "none")
        .EachReadsInches("keys-1-2", "length", 0.7460m).Shows("keys-1-2", "notch", "one");

    private static Bench WideSlots(Bench sound) =>
        Enumerable.Range(1, 4).Aggregate(sound, (b, i) => b.ReadsInches($"blocker-ring-{i}/slot-width", 0.3900m, 0.3900m, 0.3900m));
}
