using RebuildApi.Contracts;
using RebuildApi.TestKit;
using static RebuildApi.Contracts.Compatibility;
using static RebuildApi.Engine.Tests.Pairings.Bench;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>Running teeth and sets that stay together (common practice, no source). Numbers are invented.</summary>
public sealed class GearPairTests
{
    private static readonly PairingRule s_mesh = Rule("mesh-pair", ("driver", "countergear/third"), ("driven", "third-gear"));
    private static readonly PairingRule s_centres = Rule("centre-distance", ("driver", "countergear/third"), ("driven", "third-gear"), ("case", "case"))
        .With("play-low", Mm(-0.02m)).With("play-high", Mm(0.08m));

    private static readonly PairingRule s_cluster = Rule("thrust-direction", ("first", "countergear/input"), ("second", "countergear/third")).With("relation", "same-cluster");
    private static readonly PairingRule s_set = Rule("matched-set", ("first", "hub"), ("second", "sleeve"));

    [Fact]
    public void Mates_have_the_same_helix_and_opposite_hands()
    {
        Assert.Equal(Compatible, Geared("countergear; third-gear").Judge(s_mesh).Outcome);
        Assert.Contains("mesh-hands-alike", Geared("countergear; third-gear", Hand.Left).Judge(s_mesh).Codes());
        Assert.Contains("mesh-geometry-differs", Geared("countergear; third-gear", Hand.Right, helix: 0.41).Judge(s_mesh).Codes());
    }

    [Theory]
    [InlineData("teeth=25", Compatible)]
    [InlineData("teeth=24", Incompatible)]
    [InlineData("", NotAssessed)]
    public void Teeth_that_are_counted_must_be_those_of_the_set(string sight, Compatibility outcome) =>
        Assert.Equal(outcome, Geared($"countergear: third.teeth=27; third-gear: {sight}").Judge(s_mesh.With("see", "teeth")).Outcome);

    [Fact]
    public void Changing_one_gear_of_a_mesh_demands_the_other()
    {
        var together = s_mesh.With("keep-together", "yes");
        Assert.Equal(Compatible, Geared("countergear; third-gear").Judge(together).Outcome);
        var split = Geared("countergear; third-gear").Exchanged("third-gear").Judge(together);
        Assert.Equal(Incompatible, split.Outcome);
        Assert.Contains("set-split", split.Codes());
        Assert.Equal(Compatible, Geared("countergear; third-gear").Exchanged("third-gear").Exchanged("countergear").Judge(together).Outcome);
    }

    /// <summary>Module 2.5, 27 and 25 teeth, helix 0.4 rad, no shift: 2.5·52/(2·cos 0.4) = 70.571 mm. Computed here, no source.</summary>
    [Theory]
    [InlineData("70.60", Compatible, "centre-play-inside")]
    [InlineData("70.80", Incompatible, "centre-play-above")]
    [InlineData("70.50", Incompatible, "centre-play-below")]
    public void A_pair_runs_at_the_centres_of_its_case(string centres, Compatibility outcome, string code)
    {
        var verdict = Geared($"countergear; third-gear; case: centre-distance={centres} mm").Judge(s_centres);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(code, verdict.Codes());
    }

    [Fact]
    public void A_mixed_pair_with_a_tooth_less_does_not_fit_the_case()
    {
        var right = Geared("countergear: third.teeth=27; third-gear: teeth=25; case: centre-distance=70.60 mm");
        var mixed = Geared("countergear: third.teeth=27; third-gear: teeth=24; case: centre-distance=70.60 mm");
        Assert.Equal(Compatible, right.Judge(s_centres.With("see", "teeth")).Outcome);
        Assert.Equal(Incompatible, mixed.Judge(s_centres.With("see", "teeth")).Outcome);
    }

    [Fact]
    public void A_case_that_is_not_read_is_asked_for() =>
        Assert.Equal("case/centre-distance", Assert.Single(Geared("countergear; third-gear; case: centre-distance-mark=a").Judge(s_centres).Settles).ToString());

    [Theory]
    [InlineData(Hand.Left, Compatible, "thrusts-oppose")]
    [InlineData(Hand.Right, Incompatible, "thrusts-add")]
    public void Two_rows_of_one_cluster_have_the_same_hand_so_that_their_thrusts_oppose(Hand third, Compatibility outcome, string code)
    {
        var verdict = Stage.Set("countergear", f => Teeth(f, "countergear", ("input", 30, Hand.Left, 0.4), ("third", 27, third, 0.4))).Judge(s_cluster);
        Assert.Equal(outcome, verdict.Outcome);
        Assert.Contains(code, verdict.Codes());
    }

    [Fact]
    public void Hub_and_sleeve_that_came_together_stay_together()
    {
        Assert.Equal(Compatible, Stage.Set("hub; sleeve").Judge(s_set).Outcome);
        Assert.Equal(Incompatible, Stage.Set("hub; sleeve").Exchanged("sleeve").Judge(s_set).Outcome);
    }

    [Theory]
    [InlineData("as-set", Compatible)]
    [InlineData("single", Incompatible)]
    [InlineData(null, NotAssessed)]
    public void Hub_and_sleeve_exchanged_for_a_set_are_a_set_only_when_supplied_as_one(string? supplied, Compatibility outcome) =>
        Assert.Equal(outcome, Stage.Set("hub; sleeve").Exchanged("hub", supplied).Exchanged("sleeve", supplied).Judge(s_set).Outcome);

    [Fact]
    public void Parts_that_are_only_replaced_together_need_no_set() =>
        Assert.Equal(Compatible, Stage.Set("hub; sleeve").Exchanged("hub").Exchanged("sleeve").Judge(s_set.With("bond", "replace-together")).Outcome);

    [Theory]
    [InlineData("dot", "dot", Compatible)]
    [InlineData("dot", "line", Incompatible)]
    [InlineData("dot", null, NotAssessed)]
    public void A_set_that_keeps_its_index_goes_back_on_its_marks(string hub, string? sleeve, Compatibility outcome)
    {
        var stage = Stage.Set("hub; sleeve");
        var marked = stage with
        {
            Snapshot = new SnapshotBuilder(stage.Snapshot.Snapshot with
            {
                Placements = [.. stage.Snapshot.Snapshot.Placements.Select(p => p with { IndexMark = p.Position == "hub" ? hub : sleeve })],
            }),
        };
        Assert.Equal(outcome, marked.Judge(s_set.With("bond", "same-individuals-and-index")).Outcome);
    }

    [Fact]
    public void A_family_set_names_its_own_positions_and_bond()
    {
        var stage = Stage.Set("a; b", f => f with { Sets = [new MatchedSet("pair", ["a", "b"], SetBond.ReplaceTogether)] });
        var rule = Rule("matched-set").With("set", "pair");
        Assert.Equal(Compatible, stage.Judge(rule).Outcome);
        Assert.Equal(Incompatible, stage.Exchanged("a").Judge(rule).Outcome);
    }

    [Fact]
    public void A_hub_that_is_exchanged_brings_its_sleeve_with_it()
    {
        var slots = Rule("ring-slot-to-key", ("ring", "ring"), ("key", "key"), ("hub", "hub"));
        var stage = Stage.Set("ring; key; hub: key-slot=opened; sleeve", f => f with
        {
            Sets = [new MatchedSet("pair", ["hub", "sleeve"], SetBond.SameIndividuals)],
            Pairings = [slots with { Id = "slots" }, Rule("matched-set").With("set", "pair") with { Id = "set" }],
        });

        var cure = Assert.Single(stage.Judge(stage.Family.Pairings[0]).Cures);

        Assert.Equal(["hub", "sleeve"], cure.Steps.Select(s => s.Position).Distinct().Order());
        Assert.True(cure.Sufficient);
    }

    private static Stage Geared(string scene, Hand driven = Hand.Right, double helix = 0.4) => Stage.Set(scene, f => Teeth(
        Teeth(f, "countergear", ("third", 27, Hand.Left, 0.4)), "third-gear", ("", 25, driven, helix)));

    private static Family Teeth(Family family, string kind, params (string Id, int Teeth, Hand Hand, double Helix)[] rows) => family with
    {
        Kinds = [.. family.Kinds.Select(k => k.Id != kind ? k : k with
        {
            ToothSets = [.. rows.Select(r => new ToothSet(r.Id, r.Teeth, Length.Millimetres(2.5m), r.Helix, r.Hand, 0.35, 0, FamilyBuilder.Invented))],
        })],
    };
}
