using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.TestKit;
using static RebuildApi.TestKit.FamilyBuilder;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>Mixed vintages on one sleeve (common practice, no source).</summary>
public sealed class NeighbourhoodTests
{
    private static readonly string[] s_gears = ["third-gear", "input-gear"];
    private static readonly Family s_family = Declare();

    [Fact]
    public void A_back_tapered_gear_and_a_straight_one_on_one_sleeve_leave_one_side_wrong_whatever_its_form()
    {
        var neighbourhood = Judge(Scene("straight", "back-tapered", "straight"));

        Assert.Equal(Compatibility.Incompatible, neighbourhood.Outcome);
        Assert.All(neighbourhood.Choices, c => Assert.Equal(Compatibility.Incompatible, c.Outcome));
        Assert.Equal("neighbourhood-no-form-suits", Assert.Single(neighbourhood.Reasons).Code);
    }

    [Fact]
    public void Each_choice_of_sleeve_has_its_own_consequence_on_its_own_side()
    {
        var choices = Judge(Scene("straight", "back-tapered", "straight")).Choices;

        var straight = choices.Single(c => c.Form == "straight");
        Assert.Equal("engagement-straight-on-back-taper", straight.Sides.Single(s => s.Outcome == Compatibility.Incompatible).Reasons[0].Code);
        Assert.Equal("third", straight.Sides.Single(s => s.Outcome == Compatibility.Incompatible).Rule);
        var tapered = choices.Single(c => c.Form == "back-tapered");
        Assert.Equal("engagement-back-taper-on-straight-unstopped", tapered.Sides.Single(s => s.Outcome == Compatibility.Incompatible).Reasons[0].Code);
        Assert.Equal("fourth", tapered.Sides.Single(s => s.Outcome == Compatibility.Incompatible).Rule);
    }

    [Fact]
    public void Every_cure_of_a_neighbourhood_suits_all_its_sides()
    {
        var scene = Scene("straight", "back-tapered", "straight");
        var cures = Judge(scene).Cures;

        Assert.Equal(2, cures.Length);
        Assert.All(cures, cure => Assert.Equal(
            Compatibility.Compatible,
            Neighbourhoods.Judge("sleeve-3-4", Bench.Book(s_family, ProvenCures.Apply(cure, scene.Snapshot, Bench.Index(s_family))))!.Outcome));
    }

    [Fact]
    public void Gears_of_one_form_ask_for_that_sleeve() =>
        Assert.Equal("back-tapered", Judge(Scene("straight", "back-tapered", "back-tapered")).Reasons.Single().Arguments["form"]);

    [Fact]
    public void A_sleeve_that_serves_one_gear_is_no_neighbourhood() =>
        Assert.Null(Neighbourhoods.Judge("third-gear", Bench.Book(s_family, Scene("straight", "straight", "straight").Snapshot)));

    private static Neighbourhood Judge(SnapshotBuilder scene) => Assert.Single(Neighbourhoods.JudgeAll(Bench.Book(s_family, scene.Snapshot)));

    private static SnapshotBuilder Scene(string sleeve, string third, string fourth) => new[] { ("third-gear", third), ("input-gear", fourth) }.Aggregate(
        SnapshotBuilder.Complete(s_family).Attribute("sleeve-3-4", "form", sleeve),
        (b, gear) => b.Attribute(gear.Item1, "dog.form", gear.Item2)
            .Attribute(gear.Item1, "dog.drive-flank", "sound").Attribute(gear.Item1, "dog.coast-flank", "sound").Attribute(gear.Item1, "dog.stop", "none"));

    private static Family Declare()
    {
        var gears = s_gears.Aggregate(FamilyBuilder.Named(), (b, gear) => b.Part(gear)
            .Attribute(gear, "dog.form", "straight", "back-tapered")
            .Attribute(gear, "dog.drive-flank", "sound", "leaned").Attribute(gear, "dog.coast-flank", "sound", "leaned")
            .Attribute(gear, "dog.stop", "present", "none"));
        return gears.Part("sleeve-3-4").Attribute("sleeve-3-4", "form", "straight", "back-tapered")
            .Pairing(Serves("third", "third-gear/dog")).Pairing(Serves("fourth", "input-gear/dog")).Family;
    }

    private static PairingRule Serves(string id, string gear) =>
        Bench.Rule("engagement-form", ("gear", gear), ("sleeve", "sleeve-3-4")).With("angles", "by-form") with { Id = id };
}
