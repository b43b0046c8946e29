using RebuildApi.Engine.Clearances;

namespace RebuildApi.Families.Tests;

/// <summary>Setting third gear's end play: facts of the trade (common practice, no source), each with a twin in which one thing differs.</summary>
public class EndPlaySituations
{
    private static readonly Reading s_tight = SnapshotBuilder.Tight();

    /// <summary>The hub is read, third gear is not, and no ring is chosen yet: what is known of the end play comes from the trial.</summary>
    private static Bench Trial(params Reading[] gap) => Healthy.Brackenmere
        .ReadsInches("hub-3-4/width", 1.0760m, 1.0760m, 1.0760m, 1.0760m)
        .Unread("third-gear/length").Empties("snap-ring-3-4")
        .Tries("third-end-play", "snap-ring-3-4", "087", gap);

    private static Reading Inches(decimal gap) => Gauges.Reading(new Exact(Length.Inches(gap)));

    [Fact]
    public void Third_gear_that_drags_with_the_thinnest_ring_can_be_set_by_no_ring_of_the_series()
    {
        var answer = Trial(s_tight, s_tight, s_tight).JudgeOverHttp().Clearance("third-end-play");

        Assert.Equal(RingOutcome.NothingFits, answer.Ring!.Outcome);
        Assert.True(answer.Ring.Miss!.IsLowerBound);
        Assert.Equal(Length.Inches(0.015m), answer.Ring.Miss.ToTarget);
    }

    [Fact]
    public void The_hub_must_then_lose_at_least_fifteen_thousandths_at_its_gear_side_within_that_faces_own_limit()
    {
        var cut = Trial(s_tight, s_tight, s_tight).JudgeOverHttp().Clearance("third-end-play").Ring!.Cuts.Single(c => c.Operation == "face-hub-3-4-rear");

        Assert.Equal(Length.Inches(0.015m), cut.ToTarget);
        Assert.True(cut.IsLowerBound);
        Assert.Equal(CutPermission.Permitted, cut.Permission);
        Assert.Contains("width", cut.RemeasureGate);
        Assert.Equal(["third-end-play"], cut.Touches.Select(t => t.Loop));
    }

    [Fact]
    public void The_other_face_of_the_hub_moves_the_sleeve_and_touches_both_depths_of_engagement()
    {
        var cut = Trial(s_tight, s_tight, s_tight).JudgeOverHttp().Clearance("third-end-play").Ring!.Cuts.Single(c => c.Operation == "face-hub-3-4-front");

        Assert.Equal(["fourth-engagement", "third-end-play", "third-engagement"], cut.Touches.Select(t => t.Loop).Order(StringComparer.Ordinal));
        Assert.Equal(CutPermission.ToEnterOnly, cut.Permission);
    }

    [Fact]
    public void With_fifteen_thousandths_read_at_three_angles_the_thinnest_ring_is_right()
    {
        var answer = Trial(Inches(0.015m), Inches(0.015m), Inches(0.015m)).JudgeOverHttp().Clearance("third-end-play");

        Assert.Equal(RingOutcome.Fits, answer.Ring!.Outcome);
        Assert.Equal("087", Assert.Single(answer.Ring.Ranked[0].Members));
    }

    [Theory]
    [InlineData("ground", Compatibility.Incompatible)]
    [InlineData("as-made", Compatibility.Compatible)]
    public void A_snap_ring_that_someone_ground_to_fit_is_replaced_and_its_cause_looked_for(string surface, Compatibility outcome)
    {
        var judgement = Healthy.Brackenmere.Shows("snap-ring-3-4", "surface", surface).JudgeOverHttp();

        Assert.Equal(outcome, judgement.Pairing("snap-ring-3-4-as-made").Outcome);
    }

    [Fact]
    public void A_ground_ring_seen_as_damage_says_to_look_for_the_part_that_is_too_wide()
    {
        var part = Healthy.Brackenmere.Damaged("snap-ring-3-4", "hand-ground", "severe").JudgeOverHttp().Part("snap-ring-3-4");

        Assert.Equal(Disposition.Replace, part.Disposition);
        Assert.Contains("too wide", part.AdviceText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kit", Compatibility.Conditional)]
    [InlineData("selected", Compatibility.Compatible)]
    public void A_kit_whose_rings_are_all_one_size_cannot_set_an_end_play(string supply, Compatibility outcome) =>
        Assert.Equal(outcome, Healthy.Brackenmere.Shows("snap-ring-3-4", "supply", supply).JudgeOverHttp().Pairing("snap-ring-3-4-selected").Outcome);

    [Theory]
    [InlineData(0.0099, Outcome.Nonconforming)]
    [InlineData(0.0101, Outcome.Conforming)]
    public void Third_gear_end_play_is_judged_by_its_own_window(double gap, Outcome outcome)
    {
        // The shaft's seat is moved so that the gap with the 093 ring is the one wanted: 2.655 + gap.
        var seat = 2.655m + (decimal)gap;
        var verdict = Healthy.Brackenmere.ReadsInches("mainshaft/third-seat", seat, seat, seat).JudgeOverHttp().Clearance("third-end-play").Verdict;

        Assert.Equal(outcome, verdict.Outcome);
    }
}
