using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Judging;

public sealed class RecallTests
{
    private static readonly Family Gears = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, 10.0m), LengthOf("depth", null, null)).Family;

    [Fact]
    public void A_recall_names_the_readings_and_the_verdicts_that_fall()
    {
        var recall = Of(Read(), SnapshotBuilder.Noon.AddDays(-1), null);

        Assert.Single(recall.Measurements);
        Assert.Contains(new RecalledVerdict("gear/width", "conforming", "not-assessed"), recall.Changes);
    }

    [Fact]
    public void A_recall_leaves_readings_from_before_and_from_after_alone()
    {
        Assert.Empty(Of(Read(), SnapshotBuilder.Noon.AddDays(1), null).Measurements);
        Assert.Empty(Of(Read(), SnapshotBuilder.Noon.AddDays(-2), SnapshotBuilder.Noon.AddDays(-1)).Changes);
        Assert.Single(Of(Read(), SnapshotBuilder.Noon, SnapshotBuilder.Noon).Measurements);
    }

    [Fact]
    public void A_clearance_that_only_a_trial_assembly_vouched_for_falls_with_the_feeler()
    {
        var snapshot = SnapshotBuilder.Complete(WithGap).Snapshot with { Trials = [Trial] };

        var recall = Recall.Of(new UnitView(snapshot, new FamilyIndex(WithGap)), "feeler-1", SnapshotBuilder.Noon, null, Judge);

        Assert.Equal(["t1"], recall.Trials.Select(t => t.Id));
        Assert.Contains(new RecalledVerdict("end-play", "conforming", "not-assessed"), recall.Changes);
    }

    private static Family WithGap { get; } = new FamilyBuilder(Gears).Loop("end-play", Window(0.2m, 0.4m)!, Opens("gear", "width"), Closes("gear", "depth")).Family;

    private static TrialAssembly Trial { get; } = new(
        "t1", "end-play", [new FittedPart("gear", "gear", 1)], [], null, [SnapshotBuilder.Millimetres(0.300m)], SnapshotBuilder.Taken("feeler-1"), null);

    private static Judgement Judge(UnitView view) => UnitJudge.Judge(view, new NoHooks());

    private static UnitSnapshot Read() => SnapshotBuilder.Complete(Gears).Micrometer().Reads("gear", "width", "mic-1", 9.9m).Snapshot;

    private static Recall Of(UnitSnapshot snapshot, DateTimeOffset since, DateTimeOffset? until) =>
        Recall.Of(new UnitView(snapshot, new FamilyIndex(Gears)), "mic-1", since, until, Judge);
}
