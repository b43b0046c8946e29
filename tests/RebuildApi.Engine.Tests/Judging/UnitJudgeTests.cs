using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Judging;

public sealed class UnitJudgeTests
{
    private static readonly FamilyBuilder Shop = Named()
        .Part("third-gear", LengthOf("length", 30.00m, 30.20m))
        .Part("hub", LengthOf("width", 28.60m, 28.80m))
        .Attribute("hub", "notch", "one", "two")
        .Operation(new Operation("face-hub", Words("face"), "hub", [FaceOf("width")], [], 20, [], ["width"]));

    [Fact]
    public void A_unit_of_which_nothing_is_known_is_not_assessed_part_by_part_and_lists_all_that_is_missing()
    {
        var judgement = Judge(SnapshotBuilder.Complete(Shop.Family));
        Assert.All(judgement.Parts, p => Assert.Equal((Outcome.NotAssessed, Disposition.Undecided), (p.Outcome, p.Disposition)));
        Assert.Equal(
            "third-gear:inspection third-gear:length hub:inspection hub:width",
            string.Join(' ', judgement.Missing.Select(m => m.What == MissingWhat.Inspection ? $"{m.Position}:inspection" : $"{m.Position}:{m.Id}")));
    }

    [Fact]
    public void An_empty_position_blocks_the_unit()
    {
        var judgement = Judge(SnapshotBuilder.Of(Shop.Family).Found("hub", "hub"));
        Assert.Contains(judgement.Blocks, b => b is { Subject: "third-gear", Reason.Code: "block-no-part" });
        Assert.Contains(judgement.Missing, m => m is { Position: "third-gear", What: MissingWhat.Part });
    }

    [Fact]
    public void A_part_that_looks_sound_and_measures_well_goes_back()
    {
        var part = Part(Judge(Sound().Reads("third-gear", "length", "mic-1", 30.10m)), "third-gear");
        Assert.Equal((Outcome.Conforming, Disposition.Reuse), (part.Outcome, part.Disposition));
    }

    [Fact]
    public void A_part_that_looks_sound_is_still_replaced_when_it_measures_short()
    {
        var part = Part(Judge(Sound().Reads("third-gear", "length", "mic-1", 29.90m)), "third-gear");
        Assert.Equal((Outcome.Nonconforming, Disposition.Replace), (part.Outcome, part.Disposition));
    }

    [Fact]
    public void A_part_is_reworked_when_an_operation_of_the_family_changes_what_is_wrong_with_it()
    {
        var part = Part(Judge(Sound().Reads("hub", "width", "mic-1", 28.90m)), "hub");
        Assert.Equal(Disposition.Rework, part.Disposition);
        Assert.Equal("face-hub", Assert.Single(part.Operations).Id);
    }

    [Fact]
    public void A_unit_with_every_part_good_is_blocked_by_nothing() => Assert.Empty(Judge(
        Sound().Reads("third-gear", "length", "mic-1", 30.10m).Reads("hub", "width", "mic-1", 28.70m)).Blocks);

    [Fact]
    public void The_same_snapshot_gives_the_same_identities()
    {
        var snapshot = Sound().Reads("hub", "width", "mic-1", 28.70m);
        Assert.Equal(Judge(snapshot).InputsSha256, Judge(snapshot with { }).InputsSha256);
        Assert.NotEqual(Judge(snapshot).InputsSha256, Judge(snapshot.Reads("hub", "width", "mic-1", 28.70m)).InputsSha256);
    }

    /// <summary>Common practice, no source: rollers are counted, and a count has no uncertainty.</summary>
    [Theory]
    [InlineData(17, Outcome.Conforming)]
    [InlineData(16, Outcome.Nonconforming)]
    public void Seventeen_rollers_are_seventeen_and_one_short_is_one_short(double counted, Outcome outcome)
    {
        var exactly = new Limits(new Real(17, Dimension.Count), new Real(17, Dimension.Count), null, Invented);
        var family = Named().Part("rollers", LengthOf("count", null, null) with { Dimension = Dimension.Count, Service = exactly }).Family;
        var snapshot = SnapshotBuilder.Complete(family).Sees("rollers", new Sound()).Reads(
            "rollers", "count", null, [new Reading(null, null, counted, counted.ToString(System.Globalization.CultureInfo.InvariantCulture), "count", null)]);
        var judgement = UnitJudge.Judge(new UnitView(snapshot.Snapshot, new FamilyIndex(family)), new NoHooks());
        Assert.Equal(outcome, Part(judgement, "rollers").Outcome);
    }

    private static SnapshotBuilder Sound() =>
        SnapshotBuilder.Complete(Shop.Family).Micrometer().Sees("third-gear", new Sound()).Sees("hub", new Sound());

    private static Judgement Judge(SnapshotBuilder snapshot) =>
        UnitJudge.Judge(new UnitView(snapshot.Snapshot, new FamilyIndex(Shop.Family)), new NoHooks());

    private static PartAnswer Part(Judgement judgement, string position) => judgement.Parts.Single(p => p.Position == position);

    private static Effect FaceOf(string characteristic) => new(
        new Address("", characteristic), Length.Millimetres(-0.5m), Length.Zero, Length.Millimetres(0.01m), "front face", null, null);
}
