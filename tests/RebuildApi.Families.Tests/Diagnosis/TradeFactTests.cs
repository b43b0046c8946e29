using RebuildApi.Engine.Diagnosis;

namespace RebuildApi.Families.Tests.Diagnosis;

/// <summary>Facts of the trade; common practice, no source.</summary>
public sealed class TradeFactTests
{
    [Fact]
    public void Noise_in_every_gear_that_quiets_in_direct_points_to_the_pocket_rollers_and_the_countergear_side() =>
        Assert.Equal(["countergear-side-worn", "pocket-track-pitted"], DiagnosisCases.Of("b-04").Top(2).Order());

    [Fact]
    public void Falling_out_of_gear_on_load_with_sharp_tips_points_to_leaned_flanks_since_tips_mislead()
    {
        var (before, after) = (DiagnosisCases.Of("b-01").Diagnose(), DiagnosisCases.Of("b-02").Diagnose());

        Assert.Equal("third-flanks-leaned", after.Causes[0].Cause.Id);
        // Sharp tips speak against spent teeth, and next to nothing against leaned flanks.
        Assert.True(Chance(after, "third-teeth-spent") < Chance(before, "third-teeth-spent") / 2);
        Assert.True(Chance(after, "third-flanks-leaned") > 0.9 * Chance(before, "third-flanks-leaned"));
    }

    [Fact]
    public void One_fork_pad_worn_and_the_other_fresh_points_to_a_sleeve_that_pulls_past_its_place() =>
        Assert.Equal("sleeve-over-travels", DiagnosisCases.Of("b-13").Top(1).Single());

    [Theory]
    [InlineData("b-11", "key-slots-opened")]
    [InlineData("b-12", "keys-swapped")]
    public void Refusing_one_gear_with_a_good_ring_points_to_over_indexing_from_opened_slots_or_swapped_keys(string one, string cause) =>
        Assert.Equal(cause, DiagnosisCases.Of(one).Top(1).Single());

    [Fact]
    public void A_race_pitted_on_one_side_only_is_thrust_and_not_dirt()
    {
        var answer = DiagnosisCases.Of("b-15").Diagnose();

        Assert.Equal("input-bearing-thrust", answer.Causes[0].Cause.Id);
        Assert.True(Chance(answer, "dirt-in-the-oil") < Chance(answer, "input-bearing-thrust") / 5);
    }

    [Fact]
    public void A_gear_that_drags_when_put_together_cold_galls_when_hot() => Assert.Equal("third-set-tight", DiagnosisCases.Of("b-14").Top(1).Single());

    [Fact]
    public void Noise_that_is_also_there_in_neutral_moves_the_suspicion_from_the_pocket_rollers_to_the_countergear()
    {
        var (before, after) = (DiagnosisCases.Of("b-04").Diagnose(), DiagnosisCases.Of("b-06").Diagnose());

        Assert.True(Chance(after, "countergear-side-worn") > Chance(before, "countergear-side-worn"));
        Assert.True(Chance(after, "pocket-track-pitted") < Chance(before, "pocket-track-pitted"));
    }

    [Fact]
    public void Noise_only_with_the_clutch_pressed_is_not_the_gearbox() =>
        Assert.All(DiagnosisCases.Of("b-08").Diagnose().Causes.Take(2), c => Assert.True(c.Cause.Outside));

    [Fact]
    public void Before_anything_is_taken_apart_the_clutch_is_tried_when_every_gear_clashes()
    {
        var checks = DiagnosisCases.Of("k-02").Diagnose().Checks.Select(c => c.Clue.Look).ToList();

        Assert.True(checks[0] is "engine-off-shift" or "reverse-delay", checks[0]);
    }

    [Fact]
    public void A_check_that_tells_only_of_what_nobody_complained_of_is_not_named() =>
        Assert.DoesNotContain("noise-comes-with-pedal", DiagnosisCases.Of("b-01").Diagnose().Checks.Select(c => c.Clue.Look));

    private static double Chance(DiagnosisAnswer answer, string cause) => answer.Causes.Single(c => c.Cause.Id == cause).Probability;
}
