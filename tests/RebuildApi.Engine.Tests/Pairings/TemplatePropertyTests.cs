using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Pairings.Bench;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>What holds for every template, whatever is seen.</summary>
public sealed class TemplatePropertyTests
{
    private static readonly ImmutableArray<PairingRule> s_rules =
    [
        Rule("attributes-equal", ("first", "a"), ("second", "b")).With("attribute", "x"),
        Rule("vintage-match", ("first", "a"), ("second", "b"), ("third", "c")),
        Rule("ratio-set", ("first", "a"), ("second", "b")),
        Rule("spline-match", ("outer", "a"), ("inner", "b")),
        Rule("attributes-allowed", ("first", "a"), ("second", "b")).With("attribute", "x").With("allowed", "first=one+second=two|first=two+second=one"),
        Rule("bearing-thrust", ("bearing", "a")).With("thrust", "both"),
        Rule("bearing-envelope", ("bearing", "a"), ("seat", "b")).With("clearance-group", "one|two"),
        Rule("travel-stop", ("sleeve", "a"), ("stop", "b")),
        Rule("ring-to-cone", ("ring", "a"), ("gear", "b")).With("gap-low", Mm(0.5m)).With("gap-high", Mm(1.9m)).With("cone", "seen"),
        Rule("ring-slot-to-key", ("ring", "a"), ("key", "b"), ("hub", "c")),
        Rule("key-length-to-hub", ("key", "a"), ("hub", "b")).With("notch", "one"),
        Rule("lining-against-oil", ("ring", "a"), ("oil", "b")),
        Rule("washer-material-facing", ("washer", "a")).With("materials", "one").With("choice", "two"),
        Rule("snap-ring-to-groove", ("ring", "a")),
        Rule("fork-to-groove", ("fork", "a"), ("sleeve", "b")),
    ];

    private static readonly ImmutableArray<(string Name, string[] Values)> s_sights =
    [
        ("x", ["one", "two"]), ("vintage", ["one", "two"]), ("ratio-set", ["one", "two"]), ("teeth", ["one", "two"]), ("form", ["straight", "back-tapered"]),
        ("type", ["deep-groove", "filling-slot", "tapered", "needle"]), ("envelope", ["one", "two"]), ("clearance-group", ["one", "two", "three"]),
        ("stop", ["present", "none"]), ("grip", ["grips", "slips"]), ("cone", ["one", "two"]), ("key-slot", ["sharp", "opened"]), ("notch", ["one", "two"]),
        ("lining", ["yellow-metal", "sprayed", "carbon"]), ("additive", ["none", "mild", "extreme-pressure", "friction-modified"]),
        ("material", ["one", "two", "three"]), ("surface", ["as-made", "ground"]), ("input-pad", ["fresh", "light", "worn"]), ("output-pad", ["fresh", "light", "worn"]),
    ];

    private static readonly Family s_family = s_rules.Aggregate(
        FamilyBuilder.Named().Part("a", FamilyBuilder.LengthOf("reserve-gap", null, null)).Part("b").Part("c"),
        (family, rule) => family.Pairing(rule with { Id = rule.Template })).Family;

    [Fact]
    public void Every_sufficient_cure_applied_and_judged_again_gives_compatible() => Scenes.Sample(
        scene => s_rules.All(rule => rule.Judge(s_family, scene).Cures.Where(c => c.Sufficient).All(c =>
            PairingJudge.Outcome(rule, Book(s_family, ProvenCures.Apply(c, scene.Snapshot, Index(s_family)))) == Compatibility.Compatible)),
        iter: 40);

    [Fact]
    public void Nothing_seen_at_all_is_never_compatible() => Assert.All(
        s_rules, rule => Assert.Equal(Compatibility.NotAssessed, rule.Judge(s_family, SnapshotBuilder.Complete(s_family)).Outcome));

    [Fact]
    public void A_sight_taken_away_never_makes_a_verdict_better() => Gen.Select(Scenes, Gen.Int[0, s_sights.Length - 1], Gen.Int[0, 2]).Sample((scene, sight, part) =>
    {
        var less = new SnapshotBuilder(scene.Snapshot with
        {
            Components = [.. scene.Snapshot.Components.Select((c, i) => i == part ? c with { Attributes = c.Attributes.ToImmutableSortedDictionary().Remove(s_sights[sight].Name) } : c)],
        });
        return s_rules.All(rule =>
        {
            var (before, after) = (rule.Outcome(s_family, scene), rule.Outcome(s_family, less));
            return after == before || after is Compatibility.NotAssessed or Compatibility.Incompatible;
        });
    }, iter: 40);

    [Fact]
    public void A_doubt_always_says_what_settles_it() => Scenes.Sample(
        scene => s_rules.All(rule => rule.Judge(s_family, scene) is not { Outcome: Compatibility.NotAssessed, Settles.IsEmpty: true }), iter: 40);

    [Fact]
    public void A_rule_that_calls_a_broken_relation_good_is_not_believed() => Assert.Equal(
        Compatibility.Incompatible,
        Stage.Set("a: x=one; b: x=two").Judge(Rule("attributes-equal", ("first", "a"), ("second", "b")).With("attribute", "x") with { WhenBroken = Compatibility.Compatible }).Outcome);

    [Fact]
    public void A_family_may_soften_a_broken_relation_to_a_condition() => Assert.Equal(
        Compatibility.Conditional,
        Stage.Set("a: x=one; b: x=two").Judge(Rule("attributes-equal", ("first", "a"), ("second", "b")).With("attribute", "x") with { WhenBroken = Compatibility.Conditional }).Outcome);

    [Theory]
    [InlineData("no-such-template", "template-unknown")]
    [InlineData("engagement-form", "role-missing")]
    public void A_rule_that_cannot_be_judged_says_so(string template, string code)
    {
        var verdict = Stage.Set("a; b").Judge(Rule(template, ("first", "a")));
        Assert.Equal(Compatibility.NotAssessed, verdict.Outcome);
        Assert.Contains(code, verdict.Codes());
    }

    [Fact]
    public void An_empty_place_is_not_assessed()
    {
        var family = FamilyBuilder.Named().Part("a").Part("b").Family;
        var verdict = Rule("attributes-equal", ("first", "a"), ("second", "b")).With("attribute", "x").Judge(family, SnapshotBuilder.Of(family));
        Assert.Equal(Compatibility.NotAssessed, verdict.Outcome);
        Assert.Contains("part-missing", verdict.Codes());
    }

    [Fact]
    public void Of_several_like_parts_the_worst_decides()
    {
        var family = FamilyBuilder.Named().Kind("key").Position("keys", "key", 3).Part("hub").Family;
        var rule = Rule("key-length-to-hub", ("key", "keys"), ("hub", "hub")).With("notch", "one");
        var two = SnapshotBuilder.Complete(family).Attribute("keys-1", "notch", "one").Attribute("keys-2", "notch", "one");

        Assert.Equal(Compatibility.NotAssessed, rule.Judge(family, two).Outcome);
        Assert.Equal(Compatibility.Compatible, rule.Judge(family, two.Attribute("keys-3", "notch", "one")).Outcome);
        Assert.Equal(Compatibility.Incompatible, rule.Judge(family, two.Attribute("keys-3", "notch", "two")).Outcome);
    }

    private static Gen<SnapshotBuilder> Scenes { get; } =
        from picks in Gen.Int[-1, 3].Array[s_sights.Length * 3]
        from gap in Gen.Int[-1, 4]
        select Scene(picks, gap);

    private static SnapshotBuilder Scene(int[] picks, int gap)
    {
        string[] parts = ["a", "b", "c"];
        var seen = parts.SelectMany((part, p) => s_sights.Select((sight, s) => (part, sight, Pick: picks[(p * s_sights.Length) + s])))
            .Where(x => x.Pick >= 0 && x.Pick < x.sight.Values.Length)
            .Aggregate(SnapshotBuilder.Complete(s_family), (b, x) => b.Attribute(x.part, x.sight.Name, x.sight.Values[x.Pick]));
        return gap < 0 ? seen : seen.Reads("a", "reserve-gap", null, gap * 0.6m);
    }
}
