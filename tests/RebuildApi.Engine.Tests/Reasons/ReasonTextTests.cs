using System.Collections.Immutable;
using System.Text.RegularExpressions;
using RebuildApi.Contracts;
using RebuildApi.Engine.Reasons;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Reasons;

public sealed partial class ReasonTextTests
{
    [Fact]
    public void A_length_among_the_arguments_is_shown_in_both_systems()
    {
        var reason = new Reason("nothing-there", ImmutableSortedDictionary<string, string>.Empty.Add("position", "third-gear"), "third-gear");
        Assert.Equal("No part is recorded in third-gear.", ReasonText.Words(reason));
    }

    [Fact]
    public void An_angle_among_the_arguments_is_shown_in_degrees()
    {
        var arguments = ImmutableSortedDictionary<string, string>.Empty
            .Add("subject", "third-gear/dog.drive-flank-angle").Add("dimension", "Angle").Add("boundSi", "-0.0715585").Add("limitSi", "0");
        Assert.Equal(
            "third-gear/dog.drive-flank-angle: at most -4.1 °, below its low limit of 0 °.",
            ReasonText.Words(new Reason("bound-below-low-limit-si", arguments, "third-gear")));
    }

    [Fact]
    public void Every_code_that_the_engine_speaks_has_a_sentence()
    {
        var spoken = Directory.EnumerateFiles(Repository.PathTo("src", "RebuildApi.Engine"), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(f => ReasonCode().Matches(File.ReadAllText(f)))
            .Select(m => m.Groups[1].Value)
            .Distinct();
        Assert.DoesNotContain(spoken, code => !ReasonText.Sentences.ContainsKey(code));
    }

    [GeneratedRegex("new Reason\\(\\s*\"([a-z0-9-]+)\"")]
    private static partial Regex ReasonCode();
}
