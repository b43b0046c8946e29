using System.Text.RegularExpressions;
using RebuildApi.Engine.Reasons;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Pairings;

public sealed partial class ReasonCodeTests
{
    private static readonly string[] s_ends = ["-inside", "-below", "-above", "-doubtful"];

    [Fact]
    public void Every_reason_of_a_pairing_has_a_sentence()
    {
        var plain = Matches(PlainCode());
        var windows = Matches(WindowCode()).SelectMany(code => s_ends.Select(end => code + end));
        string[] forces = ["engagement-fresh-in", "engagement-fresh-straight", "engagement-fresh-out", "engagement-fresh-out-held", "engagement-bedded-in"];
        var spoken = plain.Concat(windows).Concat(forces).ToArray();
        Assert.True(spoken.Length > 100);
        Assert.DoesNotContain(spoken, code => !ReasonText.Sentences.ContainsKey(code));
    }

    private static IEnumerable<string> Matches(Regex pattern) => Directory
        .EnumerateFiles(Repository.PathTo("src", "RebuildApi.Engine", "Pairings"), "*.cs", SearchOption.AllDirectories)
        .SelectMany(f => pattern.Matches(File.ReadAllText(f)))
        .Select(m => m.Groups[1].Value)
        .Distinct();

    [GeneratedRegex("(?:(?:Holds|Breaks|OnCondition|Because)\\(\\s*|Compatibility\\.\\w+, |Cannot\\(rule, )\"([a-z-]+)\"")]
    private static partial Regex PlainCode();

    [GeneratedRegex("parts\\.(?:Within|DifferenceWithin|ReadingWithin)\\(\\s*\"([a-z-]+)\"")]
    private static partial Regex WindowCode();
}
