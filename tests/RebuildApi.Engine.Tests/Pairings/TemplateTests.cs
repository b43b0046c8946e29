using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.TestKit;
using static RebuildApi.Contracts.Compatibility;
using static RebuildApi.Engine.Tests.Pairings.Bench;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>Facts of the trade, each with the twin that turns it (common practice, no source).</summary>
public sealed class TemplateTests
{
    private static readonly PairingRule s_ring = Rule("ring-to-cone", ("ring", "ring"), ("gear", "gear"))
        .With("gap-low", new Exact(Length.Inches(0.030m))).With("gap-high", new Exact(Length.Inches(0.075m)));

    [Theory]
    [InlineData("ring: grip=slips, reserve-gap=0.065 in; gear", Incompatible, "ring-slips")]
    [InlineData("ring: grip=grips, reserve-gap=0.045 in; gear", Compatible, "ring-grips")]
    [InlineData("ring: grip=grips, reserve-gap=0.020 in; gear", Incompatible, "reserve-gap-below")]
    [InlineData("ring: grip=grips, reserve-gap=0.090 in; gear", Incompatible, "reserve-gap-above")]
    [InlineData("ring: reserve-gap=0.045 in; gear", NotAssessed, "pairing-look")]
    [InlineData("ring: grip=grips; gear", NotAssessed, "pairing-look", "ring/reserve-gap")]
    public void A_ring_that_stands_high_and_does_not_grip_is_rejected_although_its_gap_looks_generous(
        string scene, Compatibility outcome, string code, string? settles = null)
    {
        var verdict = Stage.Set(scene).Judge(s_ring);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(settles is null ? code : "pairing-read", verdict.Codes());
        if (settles is not null)
            Assert.Equal(settles, Assert.Single(verdict.Settles).ToString());
    }

    [Theory]
    [InlineData("fork: input-pad=worn, output-pad=fresh; sleeve", Incompatible, "fork-one-pad-worn")]
    [InlineData("fork: input-pad=light, output-pad=light; sleeve", Compatible, "fork-pads-even")]
    [InlineData("fork: input-pad=worn, output-pad=worn; sleeve", Incompatible, "fork-worn")]
    [InlineData("fork: input-pad=burnt, output-pad=light; sleeve", Incompatible, "fork-pad-burnt")]
    [InlineData("fork: input-pad=light; sleeve", NotAssessed, "pairing-look")]
    public void One_pad_worn_and_the_other_fresh_says_that_the_sleeve_has_been_pulling_past_its_place(string scene, Compatibility outcome, string code) =>
        Says(Rule("fork-to-groove", ("fork", "fork"), ("sleeve", "sleeve")), scene, outcome, code);

    [Theory]
    [InlineData("fork: input-pad=light, output-pad=light, pad-thickness=7.6 mm; sleeve: groove-width=8.1 mm", Compatible, "fork-clearance-inside")]
    [InlineData("fork: input-pad=light, output-pad=light, pad-thickness=7.0 mm; sleeve: groove-width=8.1 mm", Incompatible, "fork-clearance-above")]
    [InlineData("fork: input-pad=light, output-pad=light, pad-thickness=7.9 mm; sleeve: groove-width=8.1 mm", Incompatible, "fork-clearance-below")]
    public void A_fork_has_its_clearance_in_the_groove(string scene, Compatibility outcome, string code) =>
        Says(Rule("fork-to-groove", ("fork", "fork"), ("sleeve", "sleeve")).With("clearance-low", Mm(0.35m)).With("clearance-high", Mm(1.0m)), scene, outcome, code);

    [Theory]
    [InlineData("ring; key; hub: key-slot=opened", Incompatible, "key-slots-opened")]
    [InlineData("ring; key; hub: key-slot=sharp", Compatible, "key-slots-sharp")]
    [InlineData("ring; key; hub", NotAssessed, "pairing-look")]
    public void Opened_key_slots_of_a_hub_let_the_ring_index_too_far(string scene, Compatibility outcome, string code) =>
        Says(Rule("ring-slot-to-key", ("ring", "ring"), ("key", "key"), ("hub", "hub")), scene, outcome, code);

    /// <summary>36 teeth, keys at 33 mm: slot less key 2.88 mm is a quarter of a pitch. Computed here, no source.</summary>
    [Theory]
    [InlineData("ring: slot-width=10.88 mm; key: width=8.0 mm", Compatible, "index-share-inside")]
    [InlineData("ring: slot-width=11.90 mm; key: width=8.0 mm", Conditional, "index-share-watch")]
    [InlineData("ring: slot-width=12.80 mm; key: width=8.0 mm", Incompatible, "index-share-above")]
    [InlineData("ring: slot-width=9.80 mm; key: width=8.0 mm", Incompatible, "index-share-below")]
    [InlineData("ring: slot-width=9.80 mm; key", NotAssessed, "pairing-read")]
    public void The_play_of_the_key_in_the_rings_slot_sets_the_index(string scene, Compatibility outcome, string code) =>
        Says(Rule("ring-slot-to-key", ("ring", "ring"), ("key", "key"))
            .With("teeth", new Real(36, Dimension.Count)).With("key-radius", Mm(33m)), scene, outcome, code);

    [Theory]
    [InlineData("key: length=19.0 mm, notch=two; hub", Compatible, "key-length-inside")]
    [InlineData("key: length=17.5 mm, notch=two; hub", Incompatible, "key-length-below")]
    [InlineData("key: length=19.0 mm, notch=one; hub", Incompatible, "attribute-not-allowed")]
    [InlineData("key: notch=two; hub", NotAssessed, "pairing-read")]
    public void The_keys_of_the_one_two_hub_are_the_longer_ones(string scene, Compatibility outcome, string code) =>
        Says(Rule("key-length-to-hub", ("key", "key"), ("hub", "hub")).With("length-low", Mm(18.8m)).With("length-high", Mm(19.2m)).With("notch", "two"), scene, outcome, code);

    [Theory]
    [InlineData("bearing: type=filling-slot; gear", Incompatible, "bearing-filling-slot")]
    [InlineData("bearing: type=deep-groove; gear", Compatible, "bearing-takes-thrust")]
    [InlineData("bearing: type=cylindrical; gear", Incompatible, "bearing-takes-no-thrust")]
    [InlineData("bearing: type=tapered; gear", Incompatible, "bearing-needs-mate")]
    [InlineData("bearing; gear", NotAssessed, "pairing-look")]
    public void Helical_shafts_want_the_ordinary_deep_groove_bearing_and_not_more_balls(string scene, Compatibility outcome, string code)
    {
        var verdict = Stage.Set(scene, f => WithTeeth(f, ("gear", "", 25, Hand.Right))).Judge(Rule("bearing-thrust", ("bearing", "bearing"), ("gear", "gear")));
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(code, verdict.Codes());
    }

    [Fact]
    public void A_filling_slot_bearing_may_sit_where_there_is_no_thrust() =>
        Says(Rule("bearing-thrust", ("bearing", "bearing")), "bearing: type=filling-slot", Compatible, "bearing-no-thrust");

    [Fact]
    public void A_tapered_bearing_with_its_mate_takes_thrust_both_ways() =>
        Says(Rule("bearing-thrust", ("bearing", "front"), ("mate", "rear")).With("thrust", "both"), "front: type=tapered; rear: type=tapered", Compatible, "bearing-pair-takes-thrust");

    [Theory]
    [InlineData("sleeve: form=back-tapered; gear: stop=none", Incompatible, "stop-missing")]
    [InlineData("sleeve: form=back-tapered; gear: stop=present", Compatible, "stop-there")]
    [InlineData("sleeve: form=straight; gear: stop=none", Compatible, "stop-not-needed")]
    [InlineData("sleeve: form=back-tapered; gear", NotAssessed, "pairing-look")]
    [InlineData("sleeve; gear: stop=none", NotAssessed, "pairing-look")]
    public void A_back_tapered_sleeve_without_a_stop_over_travels_and_drags_the_fork(string scene, Compatibility outcome, string code) =>
        Says(Rule("travel-stop", ("sleeve", "sleeve"), ("stop", "gear")), scene, outcome, code);

    [Theory]
    [InlineData("9.3", Compatible, "sleeve-travel-inside")]
    [InlineData("8.5", Incompatible, "sleeve-travel-below")]
    [InlineData("10.2", Incompatible, "sleeve-travel-above")]
    public void A_sleeve_travels_past_full_depth_and_short_of_bottoming(string travel, Compatibility outcome, string code) => Says(
        Rule("travel-stop", ("sleeve", "sleeve"), ("stop", "gear"), ("travel", "rail")).With("needed", Mm(9.0m)).With("bottoming", Mm(9.8m)),
        $"sleeve: form=straight; gear: stop=none; rail: travel={travel} mm", outcome, code);

    [Theory]
    [InlineData("yellow-metal", "extreme-pressure", Incompatible, "oil-corrodes-yellow-metal")]
    [InlineData("yellow-metal", "mild", Compatible, "oil-suits-lining")]
    [InlineData("carbon", "friction-modified", Incompatible, "oil-friction-modified")]
    [InlineData("carbon", "mild", Conditional, "oil-as-lining-maker-names")]
    public void The_oil_and_the_lining_are_one_friction_pair(string lining, string additive, Compatibility outcome, string code) =>
        Says(Rule("lining-against-oil", ("ring", "ring"), ("oil", "oil")), $"ring: lining={lining}; oil: additive={additive}", outcome, code);

    [Fact]
    public void An_oil_that_the_lining_maker_names_is_right() => Says(
        Rule("lining-against-oil", ("ring", "ring"), ("oil", "oil")).With("named", "thin|thick"), "ring: lining=carbon; oil: additive=mild, grade=thin", Compatible, "attribute-allowed");

    [Theory]
    [InlineData("washer: material=bronze", Compatible, "attribute-allowed")]
    [InlineData("washer: material=polymer", Conditional, "washer-recorded-choice")]
    [InlineData("washer: material=steel", Incompatible, "attribute-not-allowed")]
    [InlineData("washer", NotAssessed, "pairing-look")]
    public void New_polymer_washers_against_sound_old_metal_ones_are_a_recorded_choice_and_not_a_rule(string scene, Compatibility outcome, string code) =>
        Says(Rule("washer-material-facing", ("washer", "washer")).With("materials", "bronze").With("choice", "polymer"), scene, outcome, code);

    [Theory]
    [InlineData(Facing.Output, Compatible)]
    [InlineData(Facing.Input, Incompatible)]
    [InlineData(Facing.Unspecified, NotAssessed)]
    public void The_grooved_face_of_a_washer_goes_toward_its_gear(Facing facing, Compatibility outcome) => Assert.Equal(outcome, Stage
        .Set("washer: material=bronze").Facing("washer", facing)
        .Judge(Rule("washer-material-facing", ("washer", "washer")).With("materials", "bronze").With("facing", "output")).Outcome);

    [Theory]
    [InlineData("ring: surface=ground", Incompatible, "snap-ring-ground")]
    [InlineData("ring: surface=as-made", Compatible, "snap-ring-as-made")]
    [InlineData("ring", NotAssessed, "pairing-look")]
    public void A_snap_ring_that_someone_ground_to_fit_is_replaced_and_its_cause_looked_for(string scene, Compatibility outcome, string code) =>
        Says(Rule("snap-ring-to-groove", ("ring", "ring")), scene, outcome, code);

    [Theory]
    [InlineData("2.20", Compatible, "ring-in-groove-inside")]
    [InlineData("2.40", Incompatible, "ring-in-groove-below")]
    [InlineData("1.90", Incompatible, "ring-in-groove-above")]
    public void A_snap_ring_sits_in_its_groove(string thickness, Compatibility outcome, string code) => Says(
        Rule("snap-ring-to-groove", ("ring", "ring"), ("groove", "shaft")).With("play-low", Mm(0m)).With("play-high", Mm(0.1m)),
        $"ring: surface=as-made, thickness={thickness} mm; shaft: groove-width=2.25 mm", outcome, code);

    [Theory]
    [InlineData("gear: vintage=late; sleeve: vintage=late", Compatible, "attributes-agree")]
    [InlineData("gear: vintage=late; sleeve: vintage=early", Incompatible, "attributes-differ")]
    [InlineData("gear: vintage=early; sleeve: vintage=late", Compatible, "combination-allowed")]
    [InlineData("gear: vintage=late; sleeve", NotAssessed, "pairing-look")]
    public void Every_combination_of_vintages_is_kept_together_unless_the_family_lists_it(string scene, Compatibility outcome, string code) =>
        Says(Rule("vintage-match", ("first", "gear"), ("second", "sleeve")).With("allowed", "first=early+second=late"), scene, outcome, code);

    [Theory]
    [InlineData("a: hand=x; b: hand=x", Compatible, "combination-allowed")]
    [InlineData("a: hand=x; b: hand=y", Conditional, "combination-conditional")]
    [InlineData("a: hand=y; b: hand=y", Incompatible, "combination-not-allowed")]
    [InlineData("a: hand=x; b", NotAssessed, "pairing-look")]
    [InlineData("a: hand=y; b", Incompatible, "combination-not-allowed")]
    public void A_table_of_combinations_decides(string scene, Compatibility outcome, string code) => Says(
        Rule("attributes-allowed", ("first", "a"), ("second", "b")).With("attribute", "hand").With("allowed", "first=x+second=x").With("conditional", "first=x+second=y"),
        scene, outcome, code);

    [Theory]
    [InlineData("hub: teeth=36, form=fine; sleeve: teeth=36, form=fine", Compatible, "attributes-agree")]
    [InlineData("hub: teeth=36, form=fine; sleeve: teeth=42, form=fine", Incompatible, "attributes-differ")]
    [InlineData("hub: teeth=36; sleeve: teeth=36, form=fine", NotAssessed, "pairing-look")]
    public void Splines_of_another_count_never_fit(string scene, Compatibility outcome, string code) =>
        Says(Rule("spline-match", ("outer", "sleeve"), ("inner", "hub")), scene, outcome, code);

    [Theory]
    [InlineData("3.15", Compatible, "spline-play-inside")]
    [InlineData("3.35", Incompatible, "spline-play-above")]
    [InlineData("3.00", Incompatible, "spline-play-below")]
    public void Splines_have_their_side_play(string space, Compatibility outcome, string code) => Says(
        Rule("spline-match", ("outer", "sleeve"), ("inner", "hub")).With("compare", "teeth").With("play-low", Mm(0.05m)).With("play-high", Mm(0.2m)),
        $"hub: teeth=36, tooth-thickness=3.05 mm; sleeve: teeth=36, space-width={space} mm", outcome, code);

    [Theory]
    [InlineData("bearing: envelope=e1, clearance-group=c3; case: envelope=e1", Compatible, "attributes-agree")]
    [InlineData("bearing: envelope=e2, clearance-group=c3; case: envelope=e1", Incompatible, "attributes-differ")]
    [InlineData("bearing: envelope=e1, clearance-group=c2; case: envelope=e1", Incompatible, "attribute-not-allowed")]
    public void A_bearing_is_of_the_size_and_clearance_that_its_seat_asks_for(string scene, Compatibility outcome, string code) =>
        Says(Rule("bearing-envelope", ("bearing", "bearing"), ("seat", "case")).With("clearance-group", "cn|c3"), scene, outcome, code);

    [Theory]
    [InlineData("g: ratio-set=a; c: ratio-set=a", Compatible)]
    [InlineData("g: ratio-set=a; c: ratio-set=b", Incompatible)]
    [InlineData("g: ratio-set=a; c", NotAssessed)]
    public void Ratio_sets_are_never_mixed(string scene, Compatibility outcome) =>
        Assert.Equal(outcome, Stage.Set(scene).Judge(Rule("ratio-set", ("first", "g"), ("second", "c"))).Outcome);

    [Theory]
    [InlineData("1.05", Compatible, "difference-inside")]
    [InlineData("1.25", Incompatible, "difference-above")]
    [InlineData("0.95", Incompatible, "difference-below")]
    public void A_difference_lies_in_its_window(string first, Compatibility outcome, string code) => Says(
        Rule("characteristics-difference", ("first", "a"), ("second", "b")).With("characteristic", "d").With("low", Mm(0m)).With("high", Mm(0.1m)),
        $"a: d={first} mm; b: d=1.0 mm", outcome, code);

    [Fact]
    public void A_difference_that_is_needed_and_of_unread_parts_is_not_assessed() => Says(
        Rule("characteristics-difference", ("first", "a"), ("second", "b")).With("characteristic", "d").With("low", Mm(0m)), "a: d=1.0 mm; b", NotAssessed, "pairing-read");

    private static void Says(PairingRule rule, string scene, Compatibility outcome, string code)
    {
        var verdict = Stage.Set(scene).Judge(rule);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(code, verdict.Codes());
    }

    private static Family WithTeeth(Family family, params (string Kind, string Id, int Teeth, Hand Hand)[] rows) => family with
    {
        Kinds = [.. family.Kinds.Select(k => k with
        {
            ToothSets = [.. rows.Where(r => r.Kind == k.Id).Select(r => new ToothSet(
                r.Id, r.Teeth, Length.Millimetres(2.5m), 0.4, r.Hand, 0.35, 0, FamilyBuilder.Invented))],
        })],
    };
}
