using RebuildApi.Contracts;
using RebuildApi.Engine.Damage;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Damage;

/// <summary>Facts of the trade: common practice, no source.</summary>
public sealed class DamageJudgeTests
{
    private static readonly FamilyBuilder Shop = FamilyBuilder.Named()
        .Part("third-gear")
        .Part("rear-bearing")
        .Part("rail")
        .Part("circlip")
        .With("circlip", k => k with { SingleUse = true })
        .Operation(new Operation("dress-rail", FamilyBuilder.Words("dress"), "rail", [], ["burrs"], 10, [], []))
        .Damage(Policy("*", "macropitting", "slight", Outcome.Conforming, Disposition.Reuse))
        .Damage(Policy("*", "macropitting", "*", Outcome.Nonconforming, Disposition.Replace))
        .Damage(Policy("rear-bearing", "macropitting", "*", Outcome.Nonconforming, Disposition.Replace))
        .Damage(Policy("rail", "burrs", "*", Outcome.Nonconforming, Disposition.Rework));

    [Fact]
    public void A_part_that_nobody_looked_at_is_not_assessed() =>
        Assert.Equal((Outcome.NotAssessed, Disposition.Undecided), Judge("third-gear"));

    [Fact]
    public void A_part_inspected_and_found_sound_goes_back() =>
        Assert.Equal((Outcome.Conforming, Disposition.Reuse), Judge("third-gear", new Sound()));

    [Fact]
    public void Light_pitting_of_a_gear_goes_back() =>
        Assert.Equal((Outcome.Conforming, Disposition.Reuse), Judge("third-gear", new DamageSeen("macropitting", "slight", null)));

    [Fact]
    public void The_same_light_pitting_of_a_bearing_does_not() =>
        Assert.Equal((Outcome.Nonconforming, Disposition.Replace), Judge("rear-bearing", new DamageSeen("macropitting", "slight", null)));

    [Fact]
    public void Damage_stands_against_a_bearing_that_was_called_sound() =>
        Assert.Equal((Outcome.Nonconforming, Disposition.Replace), Judge("rear-bearing", new Sound(), new DamageSeen("macropitting", "slight", "thrust-side")));

    [Fact]
    public void Burrs_on_a_rail_are_dressed()
    {
        var answer = Answer("rail", new DamageSeen("burrs", "slight", null));
        Assert.Equal(Disposition.Rework, answer.Disposition);
        Assert.Equal("dress-rail", Assert.Single(answer.Mends));
    }

    [Fact]
    public void The_worst_of_several_kinds_of_damage_decides() => Assert.Equal(
        (Outcome.Nonconforming, Disposition.Replace),
        Judge("third-gear", new DamageSeen("macropitting", "slight", null), new DamageSeen("macropitting", "severe", null)));

    [Fact]
    public void Damage_that_the_family_does_not_speak_of_is_left_to_a_person() =>
        Assert.Equal((Outcome.NotAssessed, Disposition.Undecided), Judge("third-gear", new DamageSeen("scuffing", "slight", null)));

    [Fact]
    public void A_snap_ring_that_came_out_of_the_gearbox_never_goes_back() =>
        Assert.Equal((Outcome.Nonconforming, Disposition.Replace), Judge("circlip", new Sound()));

    private static (Outcome, Disposition) Judge(string position, params Observation[] seen)
    {
        var answer = Answer(position, seen);
        return (answer.Outcome, answer.Disposition);
    }

    private static ConditionAnswer Answer(string position, params Observation[] seen)
    {
        var snapshot = seen.Aggregate(SnapshotBuilder.Complete(Shop.Family), (s, o) => s.Sees(position, o));
        var view = new UnitView(snapshot.Snapshot, new FamilyIndex(Shop.Family));
        return DamageJudge.Judge(view.FirstAt(position)!, view);
    }

    private static DamagePolicy Policy(string kind, string damage, string extent, Outcome outcome, Disposition disposition) =>
        new(kind, damage, extent, "*", "*", outcome, disposition, null, FamilyBuilder.Invented);
}
