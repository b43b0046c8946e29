using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>Every number of a clearance and of a series decides something: change it, and a named verdict or answer changes.</summary>
public class LoopMutationTests
{
    private static readonly Bench s_bench = Healthy.Brackenmere.Deciding();
    private static readonly FamilyIndex s_index = new(s_bench.Family);

    [Fact]
    public void Every_end_of_every_window_turns_the_verdict_of_a_gap_that_stands_on_it()
    {
        var ends = s_bench.Family.Loops.SelectMany(l => new[] { (Loop: l, IsLow: true), (Loop: l, IsLow: false) });

        var survivors = ends.Where(e =>
        {
            var probe = StandingOn(e.Loop, e.IsLow);
            return Answer(probe, s_index, e.Loop.Id).Verdict.Outcome != Outcome.Conforming
                || Answer(probe, With(e.Loop with { Window = Narrowed(e.Loop.Window, e.IsLow) }), e.Loop.Id).Verdict.Outcome != Outcome.Nonconforming;
        });

        Assert.Empty(survivors.Select(e => $"{e.Loop.Id} {(e.IsLow ? "low" : "high")}"));
    }

    [Fact]
    public void Every_coefficient_of_every_loop_counts()
    {
        var changed =
            from l in s_bench.Family.Loops
            from i in Enumerable.Range(0, l.Terms.Length)
            from t in new[] { l.Terms[i] with { Numerator = 2 * l.Terms[i].Numerator }, l.Terms[i] with { Denominator = l.Terms[i].Denominator + 1 } }
            select (Loop: l, Changed: l with { Terms = l.Terms.SetItem(i, t) }, Term: i);

        var survivors = changed.Where(c => ValueOf(s_bench, s_index, c.Loop.Id) == ValueOf(s_bench, With(c.Changed), c.Loop.Id));

        Assert.Empty(survivors.Select(c => $"{c.Loop.Id} term {c.Term}"));
    }

    [Fact]
    public void Every_thickness_of_every_series_and_its_tolerance_count()
    {
        var changed =
            from l in s_bench.Family.Loops
            from of in l.Terms.Select(t => t.Of).OfType<OfSeries>()
            from i in Enumerable.Range(0, s_index.Series[of.Series].Members.Length)
            from s in Changed(s_index.Series[of.Series], i)
            select (Loop: l.Id, of.Position, Series: s, Member: s.Members[i].Id);

        var survivors = changed.Where(c =>
        {
            var bench = s_bench.Takes(c.Position, c.Member);
            return Known(bench, s_index, c.Loop) == Known(bench, new FamilyIndex(s_bench.Family with { Series = [.. s_bench.Family.Series.Select(s => s.Id == c.Series.Id ? c.Series : s)] }), c.Loop);
        });

        Assert.Empty(survivors.Select(c => $"{c.Loop}: {c.Series.Id} {c.Member}"));
    }

    [Fact]
    public void The_temperatures_and_the_expansion_of_case_and_shaft_move_the_gap_cold_and_hot()
    {
        var loop = s_index.Loops["counter-end-play"];
        var changed = new[]
        {
            With(loop with { Thermal = loop.Thermal! with { Hot = loop.Thermal.Hot + 1 } }),
            With(loop with { Thermal = loop.Thermal with { Cold = loop.Thermal.Cold + 1 } }),
            With(loop with { Thermal = loop.Thermal with { HotWindow = Narrowed(loop.Thermal.HotWindow!, true) } }),
            With(loop with { Thermal = loop.Thermal with { ColdWindow = Narrowed(loop.Thermal.ColdWindow!, true) } }),
            Expanding("steel"), Expanding("grey-iron"),
        };

        var now = Thermal(s_index);

        Assert.DoesNotContain(now, changed.Select(Thermal));
    }

    private static string Thermal(FamilyIndex index) =>
        string.Join("; ", Answer(s_bench, index, "counter-end-play").Thermal.Select(t => t.ToString()));

    private static FamilyIndex Expanding(string material) => new(s_bench.Family with
    {
        Materials = [.. s_bench.Family.Materials.Select(m => m.Id == material ? m with { ExpansionPerKelvin = m.ExpansionPerKelvin * 1.1 } : m)],
    });

    private static IEnumerable<Series> Changed(Series series, int member) =>
    [
        series with { Members = series.Members.SetItem(member, series.Members[member] with { Thickness = series.Members[member].Thickness + new Length(1) }) },
        series with { Tolerance = series.Tolerance + Length.Micrometres(1) },
    ];

    /// <summary>Moves one whole dimension of the loop so that the gap, nominal with the middle pieces, comes to stand on the end of its window.</summary>
    private static Bench StandingOn(ClearanceLoop loop, bool isLow)
    {
        var term = loop.Terms.First(t => t is { Of: OfPart, Denominator: 1 } && Math.Abs(t.Numerator) == 1);
        var at = ((OfPart)term.Of).At;
        var missing = ((Exact)(isLow ? loop.Window.Low! : loop.Window.High!)).Value - Nominal.GapOf(loop, s_index, null);
        var drawing = s_index.NewLimitsAt(at)!;
        var middle = (((Exact)drawing.Low!).Value.Nanometres + ((Exact)drawing.High!).Value.Nanometres) / 2;
        var readings = Enumerable.Repeat(Gauges.Reading(new Exact(new Length(middle + (term.Numerator * missing.Nanometres)))), 9);
        return Enumerable.Range(1, s_index.Positions[at.Position].Quantity).Aggregate(s_bench, (b, i) => b.Reads(at.ToString(), i, [.. readings]));
    }

    private static Limits Narrowed(Limits window, bool low)
    {
        var (a, b) = (((Exact)window.Low!).Value, ((Exact)window.High!).Value);
        return Limits.Between(low ? a + new Length(1) : a, low ? b : b - new Length(1), window.Source);
    }

    private static FamilyIndex With(ClearanceLoop loop) => new(s_bench.Family with { Loops = [.. s_bench.Family.Loops.Select(l => l.Id == loop.Id ? loop : l)] });

    private static ClearanceAnswer Answer(Bench bench, FamilyIndex index, string loop) =>
        ClearanceJudge.Judge(index.Loops[loop], new EstimateBook(new UnitView(bench.Snapshot, index)));

    private static Quantity? ValueOf(Bench bench, FamilyIndex index, string loop) => Answer(bench, index, loop).Combined.Value;

    private static (Quantity?, double) Known(Bench bench, FamilyIndex index, string loop)
    {
        var combined = Answer(bench, index, loop).Combined;
        return (combined.Value, combined.StandardUncertainty);
    }
}
