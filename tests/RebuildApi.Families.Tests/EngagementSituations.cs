namespace RebuildApi.Families.Tests;

/// <summary>Engagement teeth, sleeve and fork: facts of the trade (common practice, no source), each with a twin in which one thing differs.</summary>
public class EngagementSituations
{
    private static readonly Bench s_sound = Healthy.Brackenmere;

    private static Bench BackTaperedThird => s_sound.Shows("third-gear", "dog.form", "back-tapered").ReadsDegrees("third-gear/dog.drive-flank-angle", 3.5, 3.5, 3.5);

    private static Bench BackTaperedSleeve(Bench bench) => bench.Shows("sleeve-3-4", "form", "back-tapered").ReadsDegrees("sleeve-3-4/drive-flank-angle", 3.5, 3.5, 3.5);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Straight_cut_gears_tolerate_straight_engagement_teeth_and_helical_ones_want_their_hold_watched(bool helical)
    {
        var family = helical ? s_sound.Family : s_sound.Family with
        {
            Kinds = [.. s_sound.Family.Kinds.Select(k => k with { ToothSets = [.. k.ToothSets.Select(t => t with { HelixAngle = 0 })] })],
        };

        var verdict = (s_sound with { Family = family }).Judge().Pairing("third-engagement-form");

        Assert.Equal(Compatibility.Compatible, verdict.Outcome);
        Assert.Equal(helical, verdict.Codes().Contains("engagement-helical-watch-hold"));
    }

    [Fact]
    public void A_back_tapered_gear_in_a_straight_sleeve_rides_on_the_tooth_edge()
    {
        var judgement = BackTaperedThird.JudgeOverHttp();

        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("third-engagement-form").Outcome);
        Assert.Contains("engagement-straight-on-back-taper", judgement.Pairing("third-engagement-form").Codes());
        Assert.Equal(Compatibility.Compatible, judgement.Pairing("fourth-engagement-form").Outcome);
    }

    [Fact]
    public void A_back_tapered_sleeve_for_its_sake_ruins_the_straight_gear_on_the_other_side()
    {
        var judgement = BackTaperedSleeve(BackTaperedThird).JudgeOverHttp();

        Assert.Equal(Compatibility.Compatible, judgement.Pairing("third-engagement-form").Outcome);
        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("fourth-engagement-form").Outcome);
        Assert.Contains("engagement-back-taper-on-straight-unstopped", judgement.Pairing("fourth-engagement-form").Codes());
        Assert.Equal(Compatibility.Conditional, judgement.Pairing("third-stop").Outcome);
    }

    [Fact]
    public void Two_back_tapered_gears_and_their_sleeve_run_together()
    {
        var both = BackTaperedSleeve(BackTaperedThird).Shows("input-gear", "dog.form", "back-tapered").ReadsDegrees("input-gear/dog.drive-flank-angle", 3.5, 3.5, 3.5);

        var judgement = both.JudgeOverHttp();

        Assert.Equal(Compatibility.Compatible, judgement.Pairing("third-engagement-form").Outcome);
        Assert.Equal(Compatibility.Compatible, judgement.Pairing("fourth-engagement-form").Outcome);
    }

    [Fact]
    public void Back_tapers_of_different_angle_do_not_seat_on_each_other()
    {
        var judgement = BackTaperedSleeve(BackTaperedThird).ReadsDegrees("sleeve-3-4/drive-flank-angle", 1.5, 1.5, 1.5).JudgeOverHttp();

        Assert.Contains("engagement-tapers-differ", judgement.Pairing("third-engagement-form").Codes());
    }

    [Fact]
    public void Sharp_teeth_that_leaned_on_the_drive_side_are_pushed_out_under_load_and_explain_no_complaint_on_the_overrun()
    {
        var leaned = s_sound.Shows("third-gear", "dog.drive-flank", "leaned").Shows("third-gear", "dog.coast-flank", "dark")
            .Complains("jumps-out-under-load", "third").Complains("jumps-out-on-overrun", "third");

        var judgement = leaned.JudgeOverHttp();

        Assert.Contains("engagement-leaned-pushed-out", judgement.Pairing("third-engagement-form").Codes());
        Assert.Contains("engagement-leaned-on-drive-only", judgement.Pairing("third-engagement-form").Codes());
        Assert.Contains("third-flanks-leaned", judgement.Explains("jumps-out-under-load"));
        Assert.Empty(judgement.Explains("jumps-out-on-overrun"));
    }

    [Fact]
    public void The_same_leaned_teeth_do_not_explain_a_complaint_in_fourth()
    {
        var leaned = s_sound.Shows("third-gear", "dog.drive-flank", "leaned").Shows("third-gear", "dog.coast-flank", "dark").Complains("jumps-out-under-load", "fourth");

        Assert.Empty(leaned.JudgeOverHttp().Explains("jumps-out-under-load"));
    }

    [Fact]
    public void With_metal_left_a_back_tapered_sleeve_may_rescue_leaned_teeth_on_condition()
    {
        var rescued = BackTaperedSleeve(s_sound.Shows("third-gear", "dog.drive-flank", "leaned").Shows("third-gear", "dog.coast-flank", "dark"));

        Assert.Equal(Compatibility.Conditional, rescued.JudgeOverHttp().Pairing("third-engagement-form").Outcome);
    }

    [Fact]
    public void Teeth_without_metal_left_are_not_rescued()
    {
        var spent = BackTaperedSleeve(s_sound.Shows("third-gear", "dog.drive-flank", "spent").Shows("third-gear", "dog.coast-flank", "dark"));

        Assert.Equal(Compatibility.Incompatible, spent.JudgeOverHttp().Pairing("third-engagement-form").Outcome);
    }

    [Fact]
    public void A_flank_that_nobody_looked_at_is_never_good()
    {
        var unseen = s_sound with
        {
            Snapshot = s_sound.Snapshot with
            {
                Components = [.. s_sound.Snapshot.Components.Select(c => c.Id == "third-gear"
                    ? c with { Attributes = c.Attributes.Where(a => a.Key != "dog.drive-flank").ToImmutableSortedDictionary() }
                    : c)],
            },
        };

        var verdict = unseen.JudgeOverHttp().Pairing("third-engagement-form");

        Assert.Equal(Compatibility.NotAssessed, verdict.Outcome);
        Assert.Contains(new Address("third-gear", "dog.drive-flank"), verdict.Settles);
    }

    [Theory]
    [InlineData("worn", "fresh", Compatibility.Incompatible, "fork-one-pad-worn")]
    [InlineData("light", "light", Compatibility.Compatible, "fork-pads-even")]
    public void One_pad_worn_and_the_other_fresh_says_that_the_sleeve_was_pulling_past_its_place(string input, string output, Compatibility outcome, string reason)
    {
        var verdict = s_sound.Shows("fork-3-4", "input-pad", input).Shows("fork-3-4", "output-pad", output).JudgeOverHttp().Pairing("fork-3-4-pads");

        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(reason, verdict.Codes());
    }

    [Theory]
    [InlineData("slight", Disposition.Reuse)]
    [InlineData("severe", Disposition.Replace)]
    public void A_fork_with_even_light_wear_goes_back(string extent, Disposition disposition) =>
        Assert.Equal(disposition, s_sound.Damaged("fork-3-4", "sliding-wear", extent).JudgeOverHttp().Part("fork-3-4").Disposition);
}
