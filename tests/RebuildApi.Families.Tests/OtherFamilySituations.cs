using RebuildApi.Engine.Clearances;

namespace RebuildApi.Families.Tests;

/// <summary>Facts of the trade (common practice, no source) in the aluminium five-speed and the six-speed, each with a twin in which one thing differs.</summary>
public class OtherFamilySituations
{
    [Fact]
    public void An_aluminium_case_set_right_when_cold_has_opened_its_bearings_when_hot()
    {
        var thermal = Healthy.Ostrand.JudgeOverHttp().Clearance("output-preload").Thermal;

        Assert.Equal(["cold", "hot"], thermal.Select(t => t.When));
        Assert.All(thermal, t => Assert.Equal(Outcome.Conforming, t.Outcome));
        Assert.True(((Exact)thermal[0].Gap.Value!).Value < Length.Zero);
        Assert.True(((Exact)thermal[1].Gap.Value!).Value > Length.Zero);
    }

    [Theory]
    [InlineData("friction-modified", Compatibility.Incompatible)]
    [InlineData("mild", Compatibility.Compatible)]
    public void A_lined_ring_wants_the_oil_that_its_maker_names(string additive, Compatibility outcome) =>
        Assert.Equal(outcome, Healthy.Ostrand.Shows("oil", "additive", additive).JudgeOverHttp().Pairing("third-ring-oil").Outcome);

    [Theory]
    [InlineData("single", Compatibility.Incompatible)]
    [InlineData("as-set", Compatibility.Compatible)]
    public void Cup_and_cone_go_in_as_a_pair(string supplied, Compatibility outcome) =>
        Assert.Equal(outcome, Healthy.Ostrand.Shows("output-bearing-rear", "supplied", supplied).JudgeOverHttp().Pairing("output-bearing-rear-as-pair").Outcome);

    [Theory]
    [InlineData("none", Compatibility.Incompatible)]
    [InlineData("present", Compatibility.Compatible)]
    public void Back_tapered_teeth_whose_stop_was_ground_off_let_the_sleeve_over_travel(string stop, Compatibility outcome) =>
        Assert.Equal(outcome, Healthy.Kestermere.Shows("third-gear", "dog.stop", stop).JudgeOverHttp().Pairing("third-stop").Outcome);

    [Fact]
    public void Back_tapered_teeth_that_agree_may_run_without_a_stop_but_the_stop_is_missed()
    {
        var judgement = Healthy.Kestermere.Shows("third-gear", "dog.stop", "none").JudgeOverHttp();

        Assert.Equal(Compatibility.Compatible, judgement.Pairing("third-engagement-form").Outcome);
        Assert.Equal(Compatibility.Incompatible, judgement.Pairing("third-stop").Outcome);
    }

    [Fact]
    public void One_cone_of_a_three_cone_pack_exchanged_by_itself_splits_the_set()
    {
        var split = Healthy.Kestermere.Exchanges("inner-ring-second");

        Assert.Equal(Compatibility.Incompatible, split.JudgeOverHttp().Pairing("cones-second").Outcome);
        Assert.Equal(Compatibility.Compatible, Healthy.Kestermere.JudgeOverHttp().Pairing("cones-second").Outcome);
    }

    [Fact]
    public void A_pack_of_two_shims_is_as_good_as_one_of_three()
    {
        var two = Healthy.Ostrand.Empties("output-shim");
        var three = Healthy.Ostrand.Snapshot.Placements.Where(p => p.Position == "output-shim").ToArray();
        var pack = two with { Snapshot = two.Snapshot with { Placements = two.Snapshot.Placements.AddRange(three.Take(2)) } };

        var judgement = pack.JudgeOverHttp();

        Assert.Equal(2, judgement.Parts.Count(p => p.Position == "output-shim"));
        Assert.DoesNotContain(judgement.Missing, m => m.Position == "output-shim");
    }

    [Fact]
    public void No_shim_at_all_is_missed()
    {
        var judgement = Healthy.Ostrand.Empties("output-shim").JudgeOverHttp();

        Assert.Single(judgement.Missing, m => m.Position == "output-shim");
    }

    [Fact]
    public void Shims_not_chosen_yet_leave_the_preload_open()
    {
        var answer = Healthy.Ostrand.Empties("output-shim").JudgeOverHttp().Clearance("output-preload");

        Assert.Equal(Outcome.NotAssessed, answer.Verdict.Outcome);
        Assert.Equal(RingOutcome.Fits, answer.Ring!.Outcome);
    }
}
