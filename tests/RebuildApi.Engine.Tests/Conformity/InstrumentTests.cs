using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class InstrumentTests
{
    private static readonly Family Gears = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, 10.0m)).Family;

    [Fact]
    public void An_overdue_micrometer_is_flagged_in_the_verdict()
    {
        var verdict = Judge(Overdue(OverdueRule.Flag), 9.9m);

        Assert.Equal(Outcome.Conforming, verdict.Outcome);
        Assert.Contains(verdict.Reasons, r => r.Code == "instrument-overdue");
    }

    [Fact]
    public void Where_the_shop_blocks_overdue_instruments_their_readings_do_not_count()
    {
        var verdict = Judge(Overdue(OverdueRule.Block), 9.9m);

        Assert.Equal(Outcome.NotAssessed, verdict.Outcome);
        Assert.Equal(["not-read", "instrument-overdue-blocked"], verdict.Reasons.Select(r => r.Code));
    }

    [Fact]
    public void A_micrometer_on_its_last_day_is_not_overdue()
    {
        var onTheDay = Builder(DateOnly.FromDateTime(SnapshotBuilder.Noon.UtcDateTime)).Under(Policy.Default with { Overdue = OverdueRule.Block });

        Assert.Equal(Outcome.Conforming, Judge(onTheDay, 9.9m).Outcome);
    }

    [Fact]
    public void A_step_coarser_than_a_tenth_of_the_window_is_named_where_it_leaves_doubt()
    {
        var snapshot = SnapshotBuilder.Complete(Gears).Micrometer(resolutionMm: 0.05m, limitOfErrorMm: 0.05m).Reads("gear", "width", "mic-1", 9.85m).Snapshot;

        var verdict = Judge(snapshot);

        Assert.Equal(Outcome.Inconclusive, verdict.Outcome);
        Assert.Contains(verdict.Reasons, r => r.Code == "step-coarse-for-window" && r.Arguments["stepNm"] == "50000" && r.Arguments["windowNm"] == "200000");
    }

    [Fact]
    public void A_safety_critical_value_may_ask_for_more_certainty_than_the_rest()
    {
        var strict = Policy.Default with { ByCriticality = [new CriticalityRule(Criticality.SafetyCritical, DecisionRule.Guarded, 0.999)] };
        var critical = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, 10.0m) with { Criticality = Criticality.SafetyCritical }).Family;

        // 0.006 mm inside at u = 2.3 µm: sure to 99.5 %.
        Assert.Equal(Outcome.Conforming, Judge(Reading(Gears, 9.806m).Under(strict).Snapshot).Outcome);
        Assert.Equal(Outcome.Inconclusive, JudgeOf(critical, Reading(critical, 9.806m).Under(strict).Snapshot).Outcome);

        static SnapshotBuilder Reading(Family family, decimal value) => SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "width", "mic-1", value);
    }

    [Fact]
    public void A_gauge_study_s_scatter_stands_in_where_a_part_was_read_once()
    {
        var study = new GaugeCapability("gear", "width", 3e-6, 4e-6, 78);
        var studied = new InstrumentState(
            "mic-1", "outside-micrometer", new Exact(Length.Millimetres(0.001m)), null, ErrorModel.Rectangular, null)
        { Studies = [study] };
        var snapshot = SnapshotBuilder.Complete(Gears).Instrument(studied).Reads("gear", "width", "mic-1", 9.9m).Snapshot;

        var estimate = new EstimateBook(View(Gears, snapshot)).Of(new Address("gear", "width"));

        Assert.Equal(("repeatability", 3e-6, 78.0), (estimate.Budget[0].Name, estimate.Budget[0].StandardUncertainty, estimate.Budget[0].DegreesOfFreedom));
        Assert.Equal(("between-benches", 4e-6), (estimate.Budget[1].Name, estimate.Budget[1].StandardUncertainty));
    }

    [Fact]
    public void A_reading_beyond_the_instrument_s_range_is_flagged_in_the_verdict()
    {
        var small = Micrometer with { RangeHigh = new Exact(Length.Millimetres(9.5m)) };

        Assert.Contains(Judge(SnapshotBuilder.Complete(Gears).Instrument(small), 9.9m).Reasons, r => r.Code == "reading-outside-range");
        Assert.DoesNotContain(Judge(SnapshotBuilder.Complete(Gears).Instrument(Micrometer), 9.9m).Reasons, r => r.Code == "reading-outside-range");
    }

    [Fact]
    public void Readings_between_the_last_good_calibration_and_the_bad_one_are_flagged()
    {
        var noon = SnapshotBuilder.Noon;
        Assert.True(IsFlagged(new DoubtfulTime(noon.AddDays(-1), noon.AddDays(1))));
        Assert.True(IsFlagged(new DoubtfulTime(null, noon)));
        Assert.False(IsFlagged(new DoubtfulTime(noon, noon.AddDays(1))));
        Assert.False(IsFlagged(new DoubtfulTime(null, noon.AddDays(-1))));

        static bool IsFlagged(DoubtfulTime time) =>
            Judge(SnapshotBuilder.Complete(Gears).Instrument(Micrometer with { InDoubt = [time] }), 9.9m).Reasons.Any(r => r.Code == "instrument-found-wrong");
    }

    // u² = a²/3 + r²/12 + u_ref² (JCGM 100:2008, 5.1.2): 4 µm, 1 µm and 0.5 µm give 2.3805 µm; computed here.
    [Fact]
    public void The_standard_that_an_instrument_was_set_by_is_a_line_of_the_budget()
    {
        var set = Micrometer with { ReferenceUncertainty = new Exact(Length.Millimetres(0.0005m)) };
        var snapshot = SnapshotBuilder.Complete(Gears).Instrument(set).Reads("gear", "width", "mic-1", 9.9m).Snapshot;

        var estimate = new EstimateBook(View(Gears, snapshot)).Of(new Address("gear", "width"));

        Assert.Equal(0.5e-6, estimate.Budget.Single(l => l.Name == "reference-standard").StandardUncertainty, 1e-15);
        Assert.Equal(2.3805e-6, estimate.StandardUncertainty, 5e-11);
    }

    private static InstrumentState Micrometer { get; } = new(
        "mic-1", "outside-micrometer", new Exact(Length.Millimetres(0.001m)), new Exact(Length.Millimetres(0.004m)), ErrorModel.Rectangular, null);

    private static SnapshotBuilder Overdue(OverdueRule rule) =>
        Builder(DateOnly.FromDateTime(SnapshotBuilder.Noon.UtcDateTime).AddDays(-1)).Under(Policy.Default with { Overdue = rule });

    private static SnapshotBuilder Builder(DateOnly due) => SnapshotBuilder.Complete(Gears).Instrument(new InstrumentState(
        "mic-1", "outside-micrometer", new Exact(Length.Millimetres(0.001m)), new Exact(Length.Millimetres(0.004m)), ErrorModel.Rectangular, due));

    private static Verdict Judge(SnapshotBuilder builder, decimal reading) => Judge(builder.Reads("gear", "width", "mic-1", reading).Snapshot);

    private static Verdict Judge(UnitSnapshot snapshot) => JudgeOf(Gears, snapshot);

    private static Verdict JudgeOf(Family family, UnitSnapshot snapshot)
    {
        var view = View(family, snapshot);
        return CharacteristicJudge.Judge(view.FirstAt("gear")!, family.Kinds[0].Characteristics[0], new EstimateBook(view))!;
    }

    private static UnitView View(Family family, UnitSnapshot snapshot) => new(snapshot, new FamilyIndex(family));
}
