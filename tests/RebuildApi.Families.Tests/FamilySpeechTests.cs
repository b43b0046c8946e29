using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Families.Tests;

/// <summary>What reasons are about is called by the names that the family gives it; what it does not know keeps its id, letter for letter.</summary>
public class FamilySpeechTests
{
    private static readonly FamilyIndex s_family = new(Shipped.Of("brackenmere-4"));

    [Theory]
    [InlineData("third-gear", "Third gear")]
    [InlineData("third-gear/bore", "Third gear, bore, in 3 planes")]
    [InlineData("keys-3-4/length#2", "Keys of the third and fourth hub 2, length")]
    [InlineData("third-end-play", "Third gear end play")]
    [InlineData("no-such/thing", "no-such/thing")]
    public void A_reason_begins_with_the_name_of_what_it_is_about(string subject, string name) =>
        Assert.Equal($"{name}: not read yet, and not assessed until it is.", s_family.Say(Because("not-read", ("subject", subject))));

    [Fact]
    public void Within_a_sentence_a_name_begins_small() => Assert.Equal(
        "Take 0.127 mm (0.0050 in) off third and fourth hub, width over both faces, at 4 points, measured from rear face.",
        s_family.Say(Because("cut-instruction", ("at", "hub-3-4/width"), ("datum", "rear face"), ("removedNm", "127000"))));

    private static Reason Because(string code, params (string Name, string Value)[] arguments) =>
        new(code, arguments.ToImmutableSortedDictionary(a => a.Name, a => a.Value, StringComparer.Ordinal), "rule");
}
