using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

public class RingTests
{
    private static readonly Length Thousandth = Length.Inches(0.001m);

    [Fact] // Common practice, no source: window 0.010-0.020 in, wanted 0.015 in, 0.0075 in a side.
    public void Gear_that_drags_with_the_thinnest_ring_of_87_thousandths_asks_for_a_cut_of_at_least_15_thousandths_off_the_hub()
    {
        var answer = Judge(WithFaceCuts(), Stripped(WithFaceCuts()).Reads("hub", "width", null, 28.70m).Trial("end-play", Fitted("ring-1", Length.Inches(0.087m)), SnapshotBuilder.Tight()));

        var ring = answer.Ring!;
        Assert.Equal(RingOutcome.NothingFits, ring.Outcome);
        Assert.Equal(new RingMiss(ring.Miss!.Members, Length.Inches(0.010m), Length.Inches(0.015m), true), ring.Miss);
        Assert.Equal("ring-1", string.Join(" + ", ring.Miss.Members));
        var cut = Assert.Single(ring.Cuts, c => c.Operation == "face-hub-front");
        Assert.Equal((Length.Inches(0.010m), Length.Inches(0.015m), true), (cut.ToEnter, cut.ToTarget, cut.IsLowerBound));
        Assert.Equal(CutPermission.Permitted, cut.Permission);
        Assert.Contains(cut.Reasons, r => r.Code == "cut-at-least");
        Assert.Equal("width", string.Join(" + ", cut.RemeasureGate));
    }

    [Fact] // Common practice, no source: the hub sits in several clearances, and its two faces not in the same ones.
    public void Cut_of_either_hub_face_names_every_clearance_it_changes()
    {
        var answer = Judge(WithFaceCuts(), Stripped(WithFaceCuts()).Reads("hub", "width", null, 28.70m).Trial("end-play", Fitted("ring-1", Length.Inches(0.087m)), SnapshotBuilder.Tight()));

        var front = answer.Ring!.Cuts.Single(c => c.Operation == "face-hub-front");
        var rear = answer.Ring.Cuts.Single(c => c.Operation == "face-hub-rear");
        Assert.Equal(["end-play", "engagement"], front.Touches.Select(t => t.Loop));
        Assert.Equal(["end-play"], rear.Touches.Select(t => t.Loop));
        Assert.All(front.Touches, t => Assert.Equal(Length.Inches(t.Loop == "end-play" ? 0.015m : -0.015m), t.Change));
    }

    [Fact] // Common practice, no source.
    public void Gear_end_play_below_the_window_asks_for_a_thinner_ring_before_a_cut()
    {
        var family = WithFaceCuts();

        var answer = Judge(family, Stripped(family).Trial("end-play", Fitted("ring-3", Length.Inches(0.105m)), SnapshotBuilder.Tight()));

        Assert.Equal(RingOutcome.ReadAgain, answer.Ring!.Outcome);
        Assert.Equal("ring-1", string.Join(" + ", answer.Ring.Ranked[0].Members));
        Assert.Empty(answer.Ring.Cuts);
    }

    [Fact] // Computed here, no source: 2.43 without a ring; 2.35, 2.40 and 2.45 leave 0.08, 0.03 and -0.02.
    public void Snap_ring_of_2_40_leaves_3_hundredths_in_a_gap_of_2_43()
    {
        var family = Family(Window(0, 0.10m), null, Mm(2.35m), Mm(2.40m), Mm(2.45m));

        var ring = Judge(family, Read(family, 61.23m, 30.10m, 28.70m)).Ring!;

        Assert.Equal(RingOutcome.Fits, ring.Outcome);
        Assert.Equal([Mm(0.03m), Mm(0.08m), Mm(-0.02m)], ring.Ranked.Select(r => Of(r.Gap.Value)));
        Assert.Equal(Outcome.Nonconforming, ring.Ranked[2].Outcome);
    }

    [Fact]
    public void Spacer_that_separates_opens_the_gap()
    {
        var family = Family(Window(0.05m, 0.15m), null, Mm(2.35m), Mm(2.40m), Mm(2.45m));
        var spacer = new Term(new OfSeries("ring", "ring-place"), 1);
        var loop = family.Family.Loops[0];
        family = new FamilyBuilder(family.Family with { Loops = [loop with { Terms = [.. loop.Terms.Take(3), spacer] }] });

        var ring = Judge(family, Read(family, 56.45m, 30.10m, 28.70m)).Ring!;

        Assert.Equal("ring-3", string.Join(" + ", ring.Ranked[0].Members));
        Assert.Equal(Mm(0.10m), Of(ring.Ranked[0].Gap.Value));
    }

    [Fact]
    public void Step_wider_than_the_window_misses_on_both_sides_and_says_by_how_much()
    {
        var family = Family(Window(0.10m, 0.14m), null, Mm(3.00m), Mm(3.10m));

        var ring = Judge(family, Read(family, 61.87m, 30.10m, 28.70m)).Ring!;

        Assert.Equal(RingOutcome.NothingFits, ring.Outcome);
        Assert.Equal(Mm(0.03m), ring.Miss!.ToEnter);
        Assert.Equal(Mm(0.05m), ring.Miss.ToTarget);
        Assert.False(ring.Miss.IsLowerBound);
    }

    [Fact]
    public void Gap_that_is_too_wide_for_the_thickest_ring_is_not_mended_by_facing_the_hub()
    {
        var family = WithFaceCuts();

        var ring = Judge(family, Read(family, 70m, 30.10m, 28.70m)).Ring!;

        Assert.Equal(RingOutcome.NothingFits, ring.Outcome);
        Assert.True(ring.Miss!.ToEnter < Length.Zero);
        Assert.Empty(ring.Cuts);
    }

    [Fact]
    public void Tolerance_of_a_ring_that_is_not_measured_makes_a_narrow_window_doubtful()
    {
        var family = Family(Window(0, 0.04m), Mm(0.03m), Mm(2.41m));

        var ring = Judge(family, Read(family, 61.23m, 30.10m, 28.70m)).Ring!;

        Assert.Equal(RingOutcome.Doubtful, ring.Outcome);
        Assert.Equal(Outcome.Inconclusive, ring.Ranked[0].Outcome);
    }

    [Fact]
    public void Shims_are_stacked_when_one_alone_does_not_do_it()
    {
        var family = Family(Window(0.02m, 0.06m), null, Mm(0.10m), Mm(0.15m), Mm(0.50m));
        var loop = family.Family.Loops[0];
        family = new FamilyBuilder(family.Family with { Loops = [loop with { Terms = [.. loop.Terms.Take(3), Piece("ring", "ring-place", 3)] }] });

        var ring = Judge(family, Read(family, 59.59m, 30.10m, 28.70m)).Ring!;

        Assert.Equal("ring-1 + ring-2 + ring-3", string.Join(" + ", ring.Ranked[0].Members));
        Assert.Equal(Mm(0.04m), Of(ring.Ranked[0].Gap.Value));
    }

    /// <summary>Front and rear face of the hub may each lose up to 0.020 in; the front face also carries the depth of engagement.</summary>
    private static FamilyBuilder WithFaceCuts()
    {
        var family = Family(InchWindow, null, Length.Inches(0.087m), Length.Inches(0.096m), Length.Inches(0.105m))
            .With("hub", k => k with { Characteristics = [LengthOf("width", 1, 900), LengthOf("front-step", 1, 900)] });
        return family.Loop("engagement", Window(1, 9)!, Opens("hub", "front-step"), Closes("gear", "length"))
            .Operation(Facing("face-hub-front", "front", "width", "front-step"))
            .Operation(Facing("face-hub-rear", "rear", "width"));
    }

    private static Operation Facing(string id, string datum, params string[] changes) => new(
        id, Words(id), "hub", [.. changes.Select(c => new Effect(new Address("", c), -20 * Thousandth, Length.Zero, Thousandth, datum, null, null))],
        [], 30, [], ["width"]);
}
