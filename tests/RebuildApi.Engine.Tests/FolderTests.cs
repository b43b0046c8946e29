using System.Text.RegularExpressions;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests;

/// <summary>Data flows one way: no folder of the engine needs another that needs it back.</summary>
public sealed partial class FolderTests
{
    [Fact]
    public void No_circle_runs_between_the_folders_of_the_engine()
    {
        var needs = Directory.GetDirectories(Repository.PathTo("src", "RebuildApi.Engine"))
            .Where(folder => Path.GetFileName(folder) is not ("bin" or "obj"))
            .ToDictionary(folder => Path.GetFileName(folder), Needs);
        var left = needs.Keys.ToHashSet();
        while (left.RemoveWhere(folder => !needs[folder].Overlaps(left)) > 0)
        {
        }

        Assert.Empty(left);
    }

    private static HashSet<string> Needs(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .SelectMany(file => Using().Matches(File.ReadAllText(file)))
            .Select(m => m.Groups[1].Value)
            .Where(other => other != Path.GetFileName(folder)),
    ];

    [GeneratedRegex(@"^using (?:\w+ = )?(?:static )?RebuildApi\.Engine\.(\w+)", RegexOptions.Multiline)]
    private static partial Regex Using();
}
