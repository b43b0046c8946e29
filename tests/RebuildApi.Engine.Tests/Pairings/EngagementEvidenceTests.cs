using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;
using static RebuildApi.Engine.Tests.Pairings.Bench;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>The numbers beside an engagement verdict: 400 N·m on 41 mm. Computed here, no source.</summary>
public sealed class EngagementEvidenceTests
{
    private static readonly PairingRule s_rule = EngagementScene.Rule
        .With("torque", new Real(400, Dimension.Torque)).With("engagement-radius", Mm(41m)).With("friction", new Real(0.02, Dimension.Ratio));

    [Fact]
    public void A_rigid_back_tapered_sleeve_on_straight_teeth_draws_nothing_in_when_fresh_and_its_own_angle_once_bedded_in()
    {
        var verdict = s_rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "sound", "sound", "back-tapered", "none", 0, 3.5));

        Assert.Contains("engagement-fresh-draws-nothing", verdict.Codes());
        Assert.Equal(("0", "0", "390"), Numbers(verdict, "engagement-fresh-straight"));
        Assert.Equal(("3.5", "597", "988"), Numbers(verdict, "engagement-bedded-in"));
    }

    [Fact]
    public void Leaned_teeth_are_pushed_out_once_vibration_relieves_friction()
    {
        var verdict = s_rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "leaned", "dark", "straight", "none", -3, 0));

        Assert.Equal(("3", "511", "-121"), Numbers(verdict, "engagement-fresh-out"));
        Assert.DoesNotContain("engagement-bedded-in", verdict.Codes());
    }

    [Fact]
    public void A_friction_that_still_holds_leaned_teeth_is_said_to_be_no_reserve()
    {
        var verdict = s_rule.With("friction", new Real(0.05, Dimension.Ratio))
            .Judge(EngagementScene.Family, EngagementScene.Of("straight", "leaned", "dark", "straight", "none", -3, 0));

        Assert.Equal(("3", "511", "464"), Numbers(verdict, "engagement-fresh-out-held"));
    }

    [Fact]
    public void The_whole_explanation_reads_as_plain_sentences()
    {
        var verdict = s_rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "leaned", "dark", "straight", "none", -3, 0));

        Assert.Equal(
        [
            "The engagement teeth of the third-gear have leaned over: a straight sleeve is pushed out of gear under load.",
            "The drive flanks of the third-gear are worn and the coast flanks dark and untouched: the teeth have leaned. That explains jumping out under load, not on the overrun.",
            "Fresh, the flank touched leans 3 degrees the wrong way: at 400 N·m it pushes the sleeve out with 511 N, and a friction of 0.02 does not hold it: 121 N are left.",
        ], verdict.Reasons.Select(ReasonText.Words));
    }

    [Fact]
    public void Without_a_torque_no_force_is_told() =>
        Assert.DoesNotContain(
            EngagementScene.Rule.Judge(EngagementScene.Family, EngagementScene.Of("straight", "leaned", "dark", "straight", "none", -3, 0)).Codes(),
            code => code.StartsWith("engagement-fresh", StringComparison.Ordinal));

    private static (string Degrees, string Flank, string PullOut) Numbers(PairingVerdict verdict, string code)
    {
        var told = verdict.Reasons.Single(r => r.Code == code).Arguments;
        return (told["angleDegrees"], told["flankNewtons"], told["pullOutNewtons"]);
    }
}
