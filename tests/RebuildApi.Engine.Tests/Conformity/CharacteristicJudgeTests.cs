using RebuildApi.Contracts;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class CharacteristicJudgeTests
{
    [Fact]
    public void A_worn_journal_is_as_thin_as_its_thinnest_plane()
    {
        var family = FamilyBuilder.Named().Part("shaft", LengthOf("journal", 24.95m, 25.00m, Statistic.Min)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("shaft", "journal", "mic-1", 24.98m, 24.90m, 24.97m).Snapshot;

        var verdict = Judge(family, snapshot, "shaft");

        Assert.Equal(Outcome.Nonconforming, verdict!.Outcome);
        Assert.Equal(new Exact(Length.Millimetres(24.90m)), verdict.Value!.Value);
    }

    [Fact]
    public void An_oval_bore_is_held_against_its_limits_at_both_ends()
    {
        var family = FamilyBuilder.Named().Part("case", LengthOf("bore", 62.00m, 62.04m, Statistic.MinAndMax)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("case", "bore", "mic-1", 62.02m, 62.09m).Snapshot;

        var verdict = Judge(family, snapshot, "case");

        Assert.Equal(Outcome.Nonconforming, verdict!.Outcome);
        Assert.Equal(["above-high-limit", "within-limits"], verdict.Reasons.Select(r => r.Code));
    }

    [Fact]
    public void A_part_that_only_its_drawing_knows_is_not_assessed()
    {
        var drawn = LengthOf("width", 9.8m, null) with { New = Window(9.95m, 10.05m), Unmeasured = Distribution.Rectangular };
        var family = FamilyBuilder.Named().Part("gear", drawn).Family;

        var verdict = Judge(family, SnapshotBuilder.Complete(family).Snapshot, "gear");

        Assert.Equal(Outcome.NotAssessed, verdict!.Outcome);
        Assert.Equal(EstimateBasis.Drawing, verdict.Value!.Basis);
        Assert.Equal("not-read", Assert.Single(verdict.Reasons).Code);
    }

    [Fact]
    public void Fewer_readings_than_make_a_measurement_are_not_enough()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, null, readings: 3)).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "width", "mic-1", 10m, 10m).Snapshot;

        var verdict = Judge(family, snapshot, "gear");

        Assert.Equal(Outcome.NotAssessed, verdict!.Outcome);
        Assert.Equal(new Change("more-readings", "gear/width", new Real(1, Dimension.Count), Outcome.NotAssessed), Assert.Single(verdict.WouldChange));
    }

    [Fact]
    public void The_shop_s_own_limits_stand_before_the_family_s()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", 9.8m, null)).Family;
        var strict = Policy.Default with { Limits = [new ShopLimit("gear/width", Window(9.95m, null)!)] };
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("gear", "width", "mic-1", 9.9m).Under(strict).Snapshot;

        Assert.Equal(Outcome.Nonconforming, Judge(family, snapshot, "gear")!.Outcome);
    }

    [Fact]
    public void A_characteristic_without_limits_has_no_verdict()
    {
        var family = FamilyBuilder.Named().Part("gear", LengthOf("width", null, null)).Family;

        Assert.Null(Judge(family, SnapshotBuilder.Complete(family).Snapshot, "gear"));
    }

    [Fact]
    public void The_second_of_two_like_parts_has_its_own_subject()
    {
        var family = FamilyBuilder.Named().Kind("key", LengthOf("height", 4.9m, null)).Position("keys", "key", 2).Family;
        var snapshot = SnapshotBuilder.Complete(family).Micrometer().Reads("keys-2", "height", "mic-1", 5m).Snapshot;
        var view = new UnitView(snapshot, new FamilyIndex(family));

        var verdicts = view.At("keys").Select(p => CharacteristicJudge.Judge(p, family.Kinds[0].Characteristics[0], new EstimateBook(view))!).ToArray();

        Assert.Equal(["keys/height", "keys/height#2"], verdicts.Select(v => v.Subject));
        Assert.Equal([Outcome.NotAssessed, Outcome.Conforming], verdicts.Select(v => v.Outcome));
    }

    private static Verdict? Judge(Family family, UnitSnapshot snapshot, string position)
    {
        var view = new UnitView(snapshot, new FamilyIndex(family));
        return CharacteristicJudge.Judge(view.FirstAt(position)!, view.Family.KindAt(position)!.Characteristics[0], new EstimateBook(view));
    }
}
