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
        var spoken = plain.Concat(windows).ToArray();
        Assert.True(spoken.Length > 100);
        Assert.DoesNotContain(spoken, code => !ReasonText.Sentences.ContainsKey(code));
    }

    private static IEnumerable<string> Matches(Regex pattern) => Directory
        .EnumerateFiles(Repository.PathTo("src", "RebuildApi.Engine", "Pairings"), "*.cs", SearchOption.AllDirectories)
        .SelectMany(f => pattern.Matches(File.ReadAllText(f)))
        .Select(m => m.Groups[1].Value)
        .Distinct();

    [GeneratedRegex("(?:(?:Holds|Breaks|OnCondition|Because)\\(\\s*|Compatibility\\.\\w+, |Tell\\(parts, |Cannot\\(rule, )\"([a-z-]+)\"")]
    private static partial Regex PlainCode();

    [GeneratedRegex("parts\\.(?:Within|DifferenceWithin|ReadingWithin)\\(\\s*\"([a-z-]+)\"")]
    private static partial Regex WindowCode();
}
