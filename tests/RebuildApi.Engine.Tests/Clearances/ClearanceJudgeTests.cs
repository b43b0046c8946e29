using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Clearances.EndPlay;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Clearances;

public class ClearanceJudgeTests
{
    private static readonly Limits Forward = Window(0.15m, 0.35m)!;

    [Fact] // Computed here, no source.
    public void Measured_parts_and_a_chosen_ring_give_a_conforming_end_play()
    {
        var family = Family(Forward, null, Mm(3.00m));

        var answer = Judge(family, Read(family, 62.05m, 30.10m, 28.70m).With("ring-place", "ring-kind", "3.00"));

        Assert.Equal(Outcome.Conforming, answer.Verdict.Outcome);
        Assert.Equal(Mm(0.25m), Of(answer.Verdict.Value!.Value));
        Assert.False(answer.IsWithoutPieces);
        Assert.Equal(EstimateBasis.Drawing, answer.Combined.Basis);
        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "loop-rests-on-drawing" && r.Arguments["at"] == "ring at ring-place");
    }

    [Fact]
    public void Ring_that_is_still_to_be_chosen_leaves_the_clearance_not_assessed_and_offers_the_ring()
    {
        var family = Family(Forward, null, Mm(2.90m), Mm(3.00m), Mm(3.10m));

        var answer = Judge(family, Read(family, 62.05m, 30.10m, 28.70m));

        Assert.Equal(Outcome.NotAssessed, answer.Verdict.Outcome);
        Assert.Equal(Mm(3.25m), Of(answer.Combined.Value));
        Assert.True(answer.IsWithoutPieces);
        Assert.Equal(RingOutcome.Fits, answer.Ring!.Outcome);
        Assert.Equal("ring-2", string.Join(" + ", answer.Ring.Ranked[0].Members));
    }

    [Fact]
    public void Part_that_was_not_read_leaves_the_clearance_not_assessed_and_is_asked_for()
    {
        var family = Family(Forward);

        var answer = Judge(family, Stripped(family).Reads("shaft", "shoulder", null, 62.05m).Reads("hub", "width", null, 28.70m));

        Assert.Equal(Outcome.NotAssessed, answer.Verdict.Outcome);
        Assert.Contains(answer.Verdict.WouldChange, c => c is { Code: "read-it", At: "gear/length" });
        Assert.Equal(RingOutcome.NotAssessed, answer.Ring!.Outcome);
    }

    [Fact]
    public void Drawing_values_stand_in_for_a_part_that_is_not_measured_and_the_verdict_says_so()
    {
        var drawn = LengthOf("length", 1, 900) with { New = Window(30.08m, 30.12m), Unmeasured = Distribution.Rectangular };
        var family = Family(Forward, null, Mm(3.00m)).With("gear", k => k with { Characteristics = [drawn] });

        var answer = Judge(family, Stripped(family).Reads("shaft", "shoulder", null, 62.05m).Reads("hub", "width", null, 28.70m).With("ring-place", "ring-kind", "3.00"));

        Assert.Contains(answer.Verdict.Reasons, r => r.Code == "loop-rests-on-drawing" && r.Arguments["at"] == "gear/length");
        Assert.Equal(0.02, 1000 * answer.Terms.Single(t => t.Name == "gear/length").HalfWidth, 9);
    }

    [Fact]
    public void Thickness_read_on_the_ring_counts_before_what_it_is_sold_as()
    {
        var family = Family(Forward, null, Mm(3.00m));

        var answer = Judge(family, Read(family, 62.05m, 30.10m, 28.70m).With("ring-place", "ring-kind", "3.00").Reads("ring-place", "thickness", null, 2.98m));

        Assert.Equal(Mm(0.27m), Of(answer.Combined.Value));
    }

    [Fact]
    public void Single_use_ring_that_was_found_does_not_go_back()
    {
        var family = Family(Forward, null, Mm(3.00m));

        var answer = Judge(family, Read(family, 62.05m, 30.10m, 28.70m).Found("ring-place", "ring-kind").Reads("ring-place", "thickness", null, 3.00m));

        Assert.True(answer.IsWithoutPieces);
    }

    [Fact]
    public void Window_of_the_shop_counts_before_that_of_the_family()
    {
        var family = Family(Forward, null, Mm(3.00m));
        var strict = Policy.Default with { Limits = [new ShopLimit("end-play", Window(0.26m, 0.35m)!)] };

        var answer = Judge(family, Read(family, 62.05m, 30.10m, 28.70m).With("ring-place", "ring-kind", "3.00").Under(strict));

        Assert.Equal(Outcome.Nonconforming, answer.Verdict.Outcome);
    }

    [Theory]
    [InlineData(0.15, Outcome.Conforming)]
    [InlineData(0.149999, Outcome.Nonconforming)]
    [InlineData(0.35, Outcome.Conforming)]
    [InlineData(0.350001, Outcome.Nonconforming)]
    public void Ends_of_the_window_are_inside_it_to_the_nanometre(double gap, Outcome outcome)
    {
        var exactly = Policy.Default with { Decision = DecisionRule.SimpleAcceptance };
        var family = Family(Forward, null, Mm(3.00m));

        var answer = Judge(family, Read(family, 61.80m + (decimal)gap, 30.10m, 28.70m).With("ring-place", "ring-kind", "3.00").Under(exactly));

        Assert.Equal(outcome, answer.Verdict.Outcome);
    }

    [Fact]
    public void Open_loop_is_refused()
    {
        var family = Named().Part("shaft", LengthOf("shoulder", 1, 900)).Loop("end-play", Forward, Opens("shaft", "shoulder"));

        Assert.Throws<ArgumentException>("loop", () => Judge(family, SnapshotBuilder.Complete(family.Family)));
    }

    [Fact]
    public void Loop_that_names_an_absent_characteristic_is_refused()
    {
        var family = Named().Part("shaft", LengthOf("shoulder", 1, 900)).Loop("end-play", Forward, Opens("shaft", "shoulder"), Closes("shaft", "step"));

        Assert.Throws<ArgumentException>("loop", () => Judge(family, SnapshotBuilder.Complete(family.Family)));
    }

    [Fact]
    public void Series_without_members_is_refused()
    {
        var family = Named().Part("shaft", LengthOf("shoulder", 1, 900)).Series("ring", "shaft", Length.Zero)
            .Loop("end-play", Forward, Opens("shaft", "shoulder"), Ring);

        Assert.Throws<ArgumentException>("loop", () => Judge(family, SnapshotBuilder.Complete(family.Family)));
    }

    [Fact]
    public void Series_that_does_not_exist_is_refused()
    {
        var family = Named().Part("shaft", LengthOf("shoulder", 1, 900)).Loop("end-play", Forward, Opens("shaft", "shoulder"), Ring);

        Assert.Throws<ArgumentException>("of", () => Judge(family, SnapshotBuilder.Complete(family.Family)));
    }
}
