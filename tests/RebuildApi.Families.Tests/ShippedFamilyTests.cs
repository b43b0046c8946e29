using RebuildApi.Engine.Families;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

public class ShippedFamilyTests
{
    public static TheoryData<string> Ids => Shipped.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_shipped_family_has_nothing_wrong_or_doubtful_and_every_rule_is_fired_both_ways(string id)
    {
        var found = LoadCheck.Check(Shipped.Of(id));

        Assert.Empty(found.Select(d => $"{d.Field}: {d.Code}: {d.Message}"));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_worked_case_of_a_shipped_family_comes_out_as_it_says(string id)
    {
        var family = Shipped.Of(id);

        Assert.NotEmpty(family.Golden);
        Assert.Empty(GoldenCheck.Run(family, new NoHooks()).Select(d => $"{d.Field}: {d.Message}"));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_rule_that_loses_its_cases_is_doubted(string id)
    {
        var family = Shipped.Of(id);

        var found = LoadCheck.Check(family with { Golden = [] });

        var limits = family.Kinds.SelectMany(k => k.Characteristics).Count(c => c.Service is not null);
        Assert.Equal((family.Loops.Length, family.Pairings.Length), (found.Count(d => d.Code == "clearance-untested"), found.Count(d => d.Code == "pairing-untested")));
        Assert.True(found.Count(d => d.Code == "limit-untested") >= limits);
    }

    [Fact]
    public void A_worked_case_that_expects_something_else_is_found()
    {
        var family = Shipped.Of("brackenmere-4");
        var wrong = family with { Golden = [family.Golden[0] with { Expected = [new Expectation("third-end-play", "nonconforming"), new Expectation("nothing", "conforming")] }] };

        Assert.Equal(["golden-differs", "golden-subject-unknown"], GoldenCheck.Run(wrong, new NoHooks()).Select(d => d.Code));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_plug_in_declares_the_same_family_each_time(string id)
    {
        var again = Shipped.Plugins.SelectMany(p => p.Declare()).Single(f => f.Version.Id == id);

        Assert.Equal(new FamilyIndex(Shipped.Of(id)).DeclarationSha256, new FamilyIndex(again).DeclarationSha256);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_limit_of_a_shipped_family_is_marked_as_invented(string id)
    {
        var family = Shipped.Of(id);

        var sources = family.Kinds.SelectMany(k => k.Characteristics).SelectMany(c => new[] { c.New, c.Service })
            .Concat(family.Positions.SelectMany(p => p.Overrides).SelectMany(o => new[] { o.New, o.Service }))
            .Concat(family.Loops.Select(l => (Limits?)l.Window))
            .OfType<Limits>()
            .Select(l => l.Source);

        Assert.All(sources, s => Assert.Equal(SourceKind.Invented, s.Kind));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_middle_piece_of_each_series_or_some_pack_closes_each_clearance_at_nominal(string id)
    {
        var family = Shipped.Of(id);
        var index = new FamilyIndex(family);

        var open = family.Loops.Where(l => !Nominal.GapsOf(l, index).Any(l.Window.Contains)).Select(l => l.Id);

        Assert.Empty(open);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_series_covers_every_clearance_that_its_drawing_tolerances_can_make(string id)
    {
        var family = Shipped.Of(id);
        var index = new FamilyIndex(family);
        var setByOnePiece = family.Loops.Where(l => l.Terms.Count(t => t.Of is OfSeries) == 1 && Nominal.IsForEndPlay(l));

        var uncovered = setByOnePiece.Where(l => !Nominal.IsCovered(l, index)).Select(l => l.Id);

        Assert.Empty(uncovered);
    }
}
