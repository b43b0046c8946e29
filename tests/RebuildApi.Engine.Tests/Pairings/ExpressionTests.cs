using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Pairings;

/// <summary>Rules that a family writes itself. Computed here, no source.</summary>
public sealed class ExpressionTests
{
    private const string Scene = "gear: length=30.0 mm, form=late; hub: width=29.5 mm, form=late";

    [Theory]
    [InlineData("[first/length] - [h/width] < 0.6", Compatibility.Compatible)]
    [InlineData("[first/length] - [h/width] < 0.4", Compatibility.Incompatible)]
    [InlineData("[first/length] - [h/width] <= [most] + 0.1", Compatibility.Compatible)]
    [InlineData("Abs([h/width] - [first/length]) < 0.6 and not ([first/form] == 'early')", Compatibility.Compatible)]
    [InlineData("[first/form] == [h/form] or Max([first/length], [h/width]) > 100", Compatibility.Compatible)]
    [InlineData("[first/form] == 'early'", Compatibility.Incompatible)]
    [InlineData("[first/length] - [h/width]", Compatibility.NotAssessed)]
    [InlineData("[first/form] - 1 > 0", Compatibility.NotAssessed)]
    public void An_expression_is_worked_out_from_what_was_seen_and_read(string holds, Compatibility expected) =>
        Assert.Equal(expected, Stage.Set(Scene).Judge(Rule(holds)).Outcome);

    [Fact]
    public void Where_the_doubt_of_a_reading_spans_the_limit_nothing_is_said()
    {
        var fine = Stage.Set(Scene);
        var snapshot = fine.Snapshot.Micrometer(limitOfErrorMm: 0.2m).Snapshot;
        var coarse = fine with
        {
            Snapshot = new SnapshotBuilder(snapshot with { Measurements = [.. snapshot.Measurements.Select(m => m with { Taken = m.Taken with { Instrument = "mic-1" } })] }),
        };

        var verdict = coarse.Judge(Rule("[first/length] - [h/width] < 0.501"));

        Assert.Equal(Compatibility.NotAssessed, verdict.Outcome);
        Assert.Equal("expression-doubtful", Assert.Single(verdict.Reasons).Code);
    }

    [Fact]
    public void What_was_not_seen_is_asked_for()
    {
        var verdict = Stage.Set("gear: form=late; hub: width=29.5 mm", f => f with
        {
            Kinds = [.. f.Kinds.Select(k => k.Id == "hub" ? k with { Attributes = [new AttributeDefinition("form", FamilyBuilder.Words("form"), [])] } : k)],
        }).Judge(Rule("[first/form] == [h/form]"));

        Assert.Equal((Compatibility.NotAssessed, new Address("hub", "form")), (verdict.Outcome, Assert.Single(verdict.Settles)));
    }

    [Theory]
    [InlineData("1 ** 9 > 0")]
    [InlineData("9! > 0")]
    [InlineData("1 << 9 > 0")]
    [InlineData("System.IO.File.Exists('x')")]
    [InlineData("Pow(9, 9) > 0")]
    [InlineData("if([first/length] > 1, true, false)")]
    [InlineData("{1, 2}")]
    [InlineData("[first/length] >")]
    [InlineData("")]
    public void What_is_not_of_the_small_language_is_refused_before_it_is_worked_out(string holds) =>
        Assert.Contains("expression-form", Problems(holds));

    [Fact]
    public void A_long_expression_is_refused() => Assert.Contains("expression-form", Problems("1" + string.Concat(Enumerable.Repeat(" + 1", 200)) + " > 0"));

    [Fact]
    public void Brackets_too_deep_are_refused() => Assert.Contains("expression-form", Problems(new string('(', 30) + "1" + new string(')', 30) + " > 0"));

    [Theory]
    [InlineData("[x/length] > 1")]
    [InlineData("[first/weight] > 1")]
    [InlineData("[least] > 1")]
    public void A_name_that_means_nothing_is_found(string holds) => Assert.Contains("expression-name", Problems(holds));

    private static IEnumerable<string> Problems(string holds) => Templates.Check(Rule(holds), new FamilyIndex(Stage.Set(Scene).Family)).Select(p => p.Code);

    private static PairingRule Rule(string holds) => new(
        "own-rule", FamilyBuilder.Words("own"), "expression",
        ImmutableSortedDictionary<string, string>.Empty.Add("first", "gear").Add("h", "hub"),
        ImmutableSortedDictionary<string, Quantity>.Empty.Add("most", new Exact(Length.Millimetres(0.5m))),
        ImmutableSortedDictionary<string, string>.Empty.Add("holds", holds),
        Compatibility.Incompatible, Severity.Wear, FamilyBuilder.Words("it wears"), [], FamilyBuilder.Invented);
}
