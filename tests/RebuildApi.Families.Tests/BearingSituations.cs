namespace RebuildApi.Families.Tests;

/// <summary>Bearings, journals, rollers and washers: facts of the trade (common practice, no source), each with a twin in which one thing differs.</summary>
public class BearingSituations
{
    private static readonly Bench s_sound = Healthy.Brackenmere;

    [Fact]
    public void A_bearing_that_spins_sweetly_but_is_pitted_on_the_thrust_side_goes()
    {
        var part = s_sound.Damaged("input-bearing", "subsurface-fatigue", "slight", "thrust-side").JudgeOverHttp().Part("input-bearing");

        Assert.Equal(Disposition.Replace, part.Disposition);
        Assert.Contains("thrust, not dirt", part.AdviceText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("smooth")]
    [InlineData("rough")]
    public void Spinning_a_bearing_by_hand_is_never_evidence(string feel)
    {
        var felt = s_sound.NotLookedAt("input-bearing").Shows("input-bearing", "feel", feel);

        Assert.Equal(Outcome.NotAssessed, felt.JudgeOverHttp().Part("input-bearing").Outcome);
    }

    [Fact]
    public void A_new_bearing_with_dust_in_it_may_feel_worse_and_is_still_good()
    {
        Assert.Equal(Disposition.Reuse, s_sound.Shows("input-bearing", "feel", "rough").JudgeOverHttp().Part("input-bearing").Disposition);
    }

    [Theory]
    [InlineData("filling-slot", Compatibility.Incompatible)]
    [InlineData("deep-groove", Compatibility.Compatible)]
    public void A_filling_slot_bearing_does_not_hold_a_shaft_with_helical_thrust(string type, Compatibility outcome) =>
        Assert.Equal(outcome, s_sound.Shows("rear-bearing", "type", type).JudgeOverHttp().Pairing("rear-bearing-thrust").Outcome);

    [Theory]
    [InlineData(1.8050, Outcome.Nonconforming)]
    [InlineData(1.8700, Outcome.Conforming)]
    public void A_journal_worn_through_its_hardened_layer_runs_on_the_soft_core(double diameter, Outcome outcome)
    {
        var d = (decimal)diameter;
        var worn = s_sound.ReadsInches("mainshaft/third-journal", d, d, d, d).ReadsInches("mainshaft/case-depth", 0.0350m);

        Assert.Equal(outcome, worn.JudgeOverHttp().Characteristic("mainshaft/third-journal-layer").Outcome);
    }

    [Theory]
    [InlineData("mainshaft", "nose")]
    [InlineData("input-gear", "pocket-bore")]
    public void A_pitted_track_of_the_pocket_rollers_explains_a_noise_that_goes_away_in_direct(string position, string place)
    {
        var pitted = s_sound.Damaged(position, "macropitting", "slight", place).Complains("noise-gone-in-direct").Complains("noise-in-every-gear");

        var judgement = pitted.JudgeOverHttp();

        Assert.Equal(Disposition.Replace, judgement.Part(position).Disposition);
        Assert.Equal(["pocket-track-pitted"], judgement.Explains("noise-gone-in-direct"));
        Assert.Empty(judgement.Explains("noise-in-every-gear"));
    }

    [Theory]
    [InlineData("third-gear", "scuffing", "slight", "thrust-face", Disposition.Replace)]
    [InlineData("third-gear", "scuffing", "slight", "flank", Disposition.Reuse)]
    [InlineData("mainshaft", "overheating", "slight", "journal", Disposition.Replace)]
    [InlineData("input-gear", "plastic-deformation", "moderate", "pilot-nose", Disposition.Rework)]
    [InlineData("input-gear", "plastic-deformation", "moderate", "flank", Disposition.Replace)]
    [InlineData("countergear", "macropitting", "slight", "bore", Disposition.Replace)]
    [InlineData("countergear", "macropitting", "slight", "flank", Disposition.Reuse)]
    [InlineData("rail-3-4", "burrs", "moderate", null, Disposition.Rework)]
    [InlineData("rail-3-4", "bent", "moderate", null, Disposition.Replace)]
    public void What_damage_means_hangs_on_where_it_is(string position, string damage, string extent, string? place, Disposition disposition) =>
        Assert.Equal(disposition, s_sound.Damaged(position, damage, extent, place).JudgeOverHttp().Part(position).Disposition);

    [Theory]
    [InlineData(0.6694, Outcome.Nonconforming)]
    [InlineData(0.6690, Outcome.Conforming)]
    public void A_pilot_nose_hammered_over_no_longer_enters_its_bearing(double nose, Outcome outcome)
    {
        var d = (decimal)nose;

        Assert.Equal(outcome, s_sound.ReadsInches("input-gear/pilot-nose", 0.6688m, 0.6688m, d).JudgeOverHttp().Characteristic("input-gear/pilot-nose").Outcome);
    }

    [Theory]
    [InlineData(16, Outcome.Nonconforming)]
    [InlineData(17, Outcome.Conforming)]
    public void Full_complement_rollers_may_not_be_one_short(int count, Outcome outcome) =>
        Assert.Equal(outcome, s_sound.Counts("pocket-rollers/count", count).JudgeOverHttp().Characteristic("pocket-rollers/count").Outcome);

    [Theory]
    [InlineData(0.4000, Outcome.Nonconforming)]
    [InlineData(0.4400, Outcome.Conforming)]
    public void An_interlock_plunger_too_short_lets_two_gears_in_at_once(double length, Outcome outcome)
    {
        var l = (decimal)length;
        var judgement = s_sound.ReadsInches("interlock-plunger/length", l, l, l).Complains("two-gears-at-once").JudgeOverHttp();

        Assert.Equal(outcome, judgement.Clearance("interlock-hold").Verdict.Outcome);
        Assert.Equal(Criticality.SafetyCritical, s_sound.Family.Loops.Single(x => x.Id == "interlock-hold").Criticality);
        Assert.Equal(outcome == Outcome.Nonconforming, judgement.Explains("two-gears-at-once").Contains("interlock-short"));
    }

    [Theory]
    [InlineData("polymer", Compatibility.Conditional)]
    [InlineData("bronze", Compatibility.Compatible)]
    public void New_polymer_washers_against_sound_old_metal_ones_are_a_recorded_choice(string material, Compatibility outcome) =>
        Assert.Equal(outcome, s_sound.Shows("counter-washer-rear", "material", material).JudgeOverHttp().Pairing("counter-washer-rear-material").Outcome);

    [Fact]
    public void Two_parts_that_pass_each_by_itself_may_fail_together()
    {
        var judgement = s_sound
            .ReadsInches("third-gear/bore", 1.8787m, 1.8787m, 1.8787m)
            .ReadsInches("mainshaft/third-journal", 1.8736m, 1.8736m, 1.8736m, 1.8736m)
            .JudgeOverHttp();

        Assert.Equal(Outcome.Conforming, judgement.Characteristic("third-gear/bore").Outcome);
        Assert.Equal(Outcome.Conforming, judgement.Characteristic("mainshaft/third-journal").Outcome);
        Assert.Equal(Outcome.Nonconforming, judgement.Clearance("third-radial-play").Verdict.Outcome);
    }
}
