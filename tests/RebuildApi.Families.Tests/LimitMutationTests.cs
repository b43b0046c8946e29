using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Every declared limit decides something: with a reading that stands on it, moving the limit inward by the least step turns the verdict.</summary>
public class LimitMutationTests
{
    private static readonly Bench s_bench = Healthy.Brackenmere.Deciding();

    private static readonly bool[] s_ends = [true, false];

    /// <summary>A limit end at an address.</summary>
    private sealed record End(Position Position, Characteristic Characteristic, Limits Limits, bool IsLow)
    {
        public string At => $"{Position.Id}/{Characteristic.Id}";

        public Quantity Value => IsLow ? Limits.Low! : Limits.High!;
    }

    [Fact]
    public void Every_service_limit_turns_the_verdict_of_a_reading_that_stands_on_it()
    {
        var index = new FamilyIndex(s_bench.Family);

        var survivors = Ends(index).Where(e =>
        {
            var probe = StandingOn(e);
            return OutcomeOf(probe, index, e) != Outcome.Conforming || OutcomeOf(probe, new FamilyIndex(Narrowed(e)), e) != Outcome.Nonconforming;
        });

        Assert.Empty(survivors.Select(e => $"{e.At} {(e.IsLow ? "low" : "high")}"));
    }

    [Fact]
    public void One_reading_fewer_than_asked_for_settles_nothing()
    {
        var index = new FamilyIndex(s_bench.Family);
        var several = Ends(index).Where(e => e.Characteristic.MinimumReadings > 1).DistinctBy(e => e.At).ToArray();

        Assert.All(several, e =>
        {
            var readings = s_bench.Snapshot.Measurements.First(m => m.Component.StartsWith(e.Position.Id, StringComparison.Ordinal) && m.Characteristic == e.Characteristic.Id).Readings;
            Assert.Equal(Outcome.NotAssessed, OutcomeOf(s_bench.Reads(e.At, 1, readings.RemoveAt(0)), index, e));
        });
    }

    private static IEnumerable<End> Ends(FamilyIndex index) =>
        from p in index.Family.Positions
        from c in index.Kinds[p.Kind].Characteristics
        where c.DerivedFrom is null
        let limits = index.ServiceLimitsAt(new Address(p.Id, c.Id))
        where limits is not null
        from isLow in s_ends
        where (isLow ? limits.Low : limits.High) is not null
        select new End(p, c, limits, isLow);

    private static Outcome OutcomeOf(Bench bench, FamilyIndex index, End end)
    {
        var view = new UnitView(bench.Snapshot, index);
        return CharacteristicJudge.Judge(view.FirstAt(end.Position.Id)!, index.CharacteristicAt(new Address(end.Position.Id, end.Characteristic.Id))!, new EstimateBook(view))!.Outcome;
    }

    /// <summary>A length stands on the limit to the nanometre; anything else a hair inside, since a mean of doubles rounds.</summary>
    private static Bench StandingOn(End end)
    {
        var value = end.Value is Real r && r.Dimension != Dimension.Count ? new Real(r.Si + (end.IsLow ? 1e-9 : -1e-9), r.Dimension) : end.Value;
        var zero = value is Exact ? (Quantity)new Exact(Length.Zero) : new Real(0, value.Kind);
        var count = Math.Max(1, end.Characteristic.MinimumReadings);
        return s_bench.Reads(end.At, 1, [.. Enumerable.Range(0, count).Select(i => Gauges.Reading(end.Characteristic.Report == Statistic.Spread && i == 0 ? zero : value))]);
    }

    private static Family Narrowed(End end)
    {
        var step = end.IsLow ? 1 : -1;
        var narrow = Equals(end.Limits.Low, end.Limits.High)
            ? new Limits(Moved(end.Limits.Low!, step), Moved(end.Limits.High!, step), null, end.Limits.Source)
            : end.IsLow
                ? new Limits(Moved(end.Limits.Low!, step), end.Limits.High, null, end.Limits.Source)
                : new Limits(end.Limits.Low, Moved(end.Limits.High!, step), null, end.Limits.Source);
        return end.Position.Overrides.Any(o => o.Characteristic == end.Characteristic.Id && o.Service is not null) ? InPosition(end, narrow) : InKind(end, narrow);
    }

    private static Quantity Moved(Quantity end, int step) => end switch
    {
        Exact e => new Exact(e.Value + new Length(step)),
        Real { Dimension: Dimension.Count } r => new Real(r.Si + step, r.Dimension),
        _ => new Real(end.InSi + (step * 1e-6), end.Kind),
    };

    private static Family InPosition(End end, Limits narrow) => s_bench.Family with
    {
        Positions = [.. s_bench.Family.Positions.Select(p => p.Id != end.Position.Id ? p : p with
        {
            Overrides = [.. p.Overrides.Select(o => o.Characteristic == end.Characteristic.Id ? o with { Service = narrow } : o)],
        })],
    };

    private static Family InKind(End end, Limits narrow) => s_bench.Family with
    {
        Kinds = [.. s_bench.Family.Kinds.Select(k => k.Id != end.Position.Kind ? k : k with
        {
            Characteristics = [.. k.Characteristics.Select(c => c.Id == end.Characteristic.Id ? c with { Service = narrow } : c)],
        })],
    };
}
