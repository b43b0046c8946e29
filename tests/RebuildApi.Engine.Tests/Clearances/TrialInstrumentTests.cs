using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>What the instrument of a trial assembly does to the clearance. Computed here, no source.</summary>
public sealed class TrialInstrumentTests
{
    private static readonly DateOnly Yesterday = DateOnly.FromDateTime(SnapshotBuilder.Noon.UtcDateTime).AddDays(-1);
    private static readonly Family Gap = FamilyBuilder.Named().Part("gear", LengthOf("width", null, null), LengthOf("depth", null, null)).Loop("end-play", Window(0.2m, 0.4m)!, Opens("gear", "width"), Closes("gear", "depth")).Family;
    private static readonly InstrumentState Feeler = new("feeler-1", "feeler", new Exact(Length.Millimetres(0.01m)), null, ErrorModel.Rectangular, null);

    [Fact]
    public void A_gap_read_with_an_overdue_feeler_counts_and_is_flagged()
    {
        var answer = Judge(Feeler with { CalibrationDue = Yesterday }, Policy.Default, At("t1", 0.3m));

        Assert.Equal(Outcome.Conforming, answer.Verdict.Outcome);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-instrument-overdue");
    }

    [Fact]
    public void Where_the_shop_blocks_overdue_instruments_the_trial_is_passed_over()
    {
        var answer = Judge(Feeler with { CalibrationDue = Yesterday }, Policy.Default with { Overdue = OverdueRule.Block }, At("t1", 0.3m));

        Assert.Equal(Outcome.NotAssessed, answer.Verdict.Outcome);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-instrument-overdue-blocked");
    }

    [Fact]
    public void A_gap_read_while_the_feeler_may_have_been_wrong_or_beyond_its_range_is_flagged()
    {
        var wrong = Feeler with { InDoubt = [new DoubtfulTime(null, SnapshotBuilder.Noon)], RangeHigh = new Exact(Length.Millimetres(0.25m)) };

        var codes = Judge(wrong, Policy.Default, At("t1", 0.3m)).Verdict.Reasons.Select(r => r.Code).ToArray();

        Assert.Contains("trial-instrument-found-wrong", codes);
        Assert.Contains("trial-outside-range", codes);
    }

    [Fact]
    public void Of_bounds_that_contradict_each_other_the_newest_stands_and_the_verdict_says_so()
    {
        var wide = At("t1", new Reading(Length.Millimetres(0.5m), null, null, "0.5", "mm", null));
        var tight = At("t2", SnapshotBuilder.Tight()) with { Taken = SnapshotBuilder.Taken("feeler-1") with { At = SnapshotBuilder.Noon.AddHours(1) } };

        var answer = Judge(Feeler, Policy.Default, wide, tight);

        Assert.Equal(Outcome.Nonconforming, answer.Verdict.Outcome);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "trial-bounds-contradict" && r.Arguments["trial"] == "t2");
    }

    private static ClearanceAnswer Judge(InstrumentState instrument, Policy policy, params TrialAssembly[] trials)
    {
        var snapshot = SnapshotBuilder.Complete(Gap).Instrument(instrument).Under(policy).Snapshot with { Trials = [.. trials] };
        return ClearanceJudge.Judge(Gap.Loops[0], new EstimateBook(new UnitView(snapshot, new FamilyIndex(Gap))));
    }

    private static TrialAssembly At(string id, decimal millimetres) => At(id, SnapshotBuilder.Millimetres(millimetres));

    private static TrialAssembly At(string id, Reading reading) => new(
        id, "end-play", [new FittedPart("gear", "gear", 1)], [], null, [reading], SnapshotBuilder.Taken("feeler-1"), null);
}
