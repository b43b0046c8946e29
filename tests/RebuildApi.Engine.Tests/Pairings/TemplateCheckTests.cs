using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;
using static RebuildApi.Engine.Tests.Pairings.Bench;

namespace RebuildApi.Engine.Tests.Pairings;

public sealed class TemplateCheckTests
{
    private static readonly PairingRule s_sound = EngagementScene.Rule.With("torque", new Real(400, Dimension.Torque));

    [Fact]
    public void A_rule_that_uses_its_template_as_it_asks_has_no_problem() => Assert.Empty(Check(s_sound));

    [Fact]
    public void Every_problem_is_named_with_its_field()
    {
        (PairingRule Rule, string Code)[] wrong =
        [
            (s_sound with { Template = "engagement-from" }, "template-unknown"),
            (Rule("engagement-form", ("gear", "third-gear/dog")), "role-missing"),
            (Rule("engagement-form", ("gear", "third-gear/dog"), ("sleeve", "sleeve-3-4"), ("sleve", "sleeve-3-4")), "role-unknown"),
            (Rule("engagement-form", ("gear", "thrid-gear/dog"), ("sleeve", "sleeve-3-4")), "position-unknown"),
            (Rule("engagement-form", ("gear", "third-gear"), ("sleeve", "sleeve-3-4")), "attribute-undeclared"),
            (s_sound.With("torqe", new Real(400, Dimension.Torque)), "parameter-unknown"),
            (s_sound.With("torque", new Real(400, Dimension.Force)), "parameter-dimension"),
            (s_sound.With("angels", "by-form"), "option-unknown"),
            (s_sound.With("angles", "by-eye"), "option-value"),
            (Rule("attributes-equal", ("first", "third-gear"), ("second", "sleeve-3-4")), "option-missing"),
            (Rule("centre-distance", ("driver", "third-gear"), ("driven", "third-gear"), ("case", "sleeve-3-4")), "parameter-missing"),
            (Rule("centre-distance", ("driver", "third-gear"), ("driven", "third-gear"), ("case", "sleeve-3-4")), "characteristic-undeclared"),
            (s_sound with { Cures = [Cure(new CureStep("third-gear", "dog.form", "curved", null, null))] }, "cure-undeclared"),
            (s_sound with { Cures = [Cure(new CureStep("third-geer", "dog.form", "straight", null, null))] }, "cure-undeclared"),
        ];
        Assert.All(wrong, w => Assert.Contains(Check(w.Rule), p => p.Code == w.Code && p.Field.Length > 0 && p.Message.Length > 0));
    }

    [Fact]
    public void An_attribute_value_without_meaning_for_the_template_is_named()
    {
        var family = FamilyBuilder.Named().Part("ring").Attribute("ring", "surface", "as-made", "polished").Family;
        Assert.Equal("attribute-value-undeclared", Assert.Single(Templates.Check(Rule("snap-ring-to-groove", ("ring", "ring")), new FamilyIndex(family))).Code);
    }

    [Fact]
    public void An_option_renames_what_a_part_calls_otherwise()
    {
        var family = FamilyBuilder.Named().Part("ring").Attribute("ring", "ground-or-not", "as-made", "ground").Family;
        var rule = Rule("snap-ring-to-groove", ("ring", "ring")).With("ring.surface", "ground-or-not");
        Assert.Empty(Templates.Check(rule, new FamilyIndex(family)));
        Assert.Equal(Compatibility.Incompatible, rule.Outcome(family, SnapshotBuilder.Complete(family).Attribute("ring", "ground-or-not", "ground")));
    }

    [Fact]
    public void Every_template_says_what_it_is_for() => Assert.All(Templates.All, t =>
    {
        Assert.Matches("^[a-z]+(-[a-z]+)*$", t.Id);
        Assert.NotEmpty(t.Name);
        Assert.True(t.About.Length > 60, t.Id);
        Assert.NotEmpty(t.Roles);
        Assert.All(t.Attributes.Concat(t.Characteristics), s => Assert.Contains(s.Role, t.Roles.Select(r => r.Name).Append("*")));
    });

    [Theory]
    [InlineData("engagement-form")]
    [InlineData("spline-match")]
    [InlineData("travel-stop")]
    [InlineData("matched-set")]
    [InlineData("mesh-pair")]
    [InlineData("ratio-set")]
    [InlineData("centre-distance")]
    [InlineData("thrust-direction")]
    [InlineData("bearing-thrust")]
    [InlineData("bearing-envelope")]
    [InlineData("ring-to-cone")]
    [InlineData("ring-slot-to-key")]
    [InlineData("key-length-to-hub")]
    [InlineData("lining-against-oil")]
    [InlineData("washer-material-facing")]
    [InlineData("snap-ring-to-groove")]
    [InlineData("fork-to-groove")]
    [InlineData("vintage-match")]
    [InlineData("attributes-equal")]
    [InlineData("attributes-allowed")]
    [InlineData("characteristics-difference")]
    public void The_templates_that_families_were_promised_are_there(string id) => Assert.NotNull(Templates.Find(id));

    private static Cure Cure(CureStep step) => new("cure", FamilyBuilder.Words("cure"), true, [step]);

    private static ImmutableArray<TemplateProblem> Check(PairingRule rule) => Templates.Check(rule, Index(EngagementScene.Family));
}
