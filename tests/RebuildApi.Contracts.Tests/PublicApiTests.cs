using PublicApiGenerator;
using RebuildApi.TestKit;

namespace RebuildApi.Contracts.Tests;

public sealed class PublicApiTests
{
    private static readonly string Approved = Repository.PathTo("tests", "RebuildApi.Contracts.Tests", "RebuildApi.Contracts.approved.txt");

    /// <summary>A plug-in that was compiled against an earlier minor version meets everything that it was compiled against.</summary>
    [Theory]
    [InlineData("1.0")]
    [InlineData("1.1")]
    public void Nothing_of_an_earlier_minor_version_is_gone(string version)
    {
        var earlier = LinesByType(File.ReadLines(Repository.PathTo("tests", "RebuildApi.Contracts.Tests", $"RebuildApi.Contracts.{version}.txt")));
        var now = LinesByType(File.ReadLines(Approved)).ToHashSet();

        Assert.DoesNotContain(earlier, line => !now.Contains(line));
    }

    /// <summary>Each line of the text with the type that it stands in; the attributes of a type stand before it and belong to it.</summary>
    private static IEnumerable<(string Type, string Line)> LinesByType(IEnumerable<string> lines)
    {
        var (type, attributes) = ("", new List<string>());
        foreach (var line in lines.Where(l => l.Trim().Length > 1))
        {
            if (line.StartsWith("    [", StringComparison.Ordinal))
            {
                attributes.Add(line);
                continue;
            }

            if (line.StartsWith("    public ", StringComparison.Ordinal))
                type = line.Split(" : ")[0];
            foreach (var attribute in attributes)
                yield return (type, attribute);
            attributes.Clear();
            yield return (type, line);
        }
    }

    /// <summary>Every plug-in depends on this surface: a change of it is a change for people who are not here.</summary>
    [Fact]
    public void The_public_face_of_the_contract_is_the_reviewed_one()
    {
        var options = new ApiGeneratorOptions { IncludeAssemblyAttributes = false };
        var now = typeof(Family).Assembly.GeneratePublicApi(options).ReplaceLineEndings("\n") + "\n";
        var approved = File.Exists(Approved) ? File.ReadAllText(Approved).ReplaceLineEndings("\n") : "";
        var received = Path.ChangeExtension(Approved, ".received.txt");

        if (now != approved)
            File.WriteAllText(received, now);

        Assert.True(
            now == approved,
            $"The public face of the contract has changed. Compare {received} with {Approved}. If the change is meant, move the first over the second, "
            + "raise the AssemblyVersion of the contract (minor when only something was added, major when a plug-in could break) and say why in the commit.");
    }
}
