using System.Text.RegularExpressions;

namespace RebuildApi.TestKit;

/// <summary>What the folders of a project need of each other, by their using directives.</summary>
public static class Folders
{
    /// <summary>The folders that lie on a circle, or that need one that does.</summary>
    public static IReadOnlyCollection<string> OnCircles(string project)
    {
        var needs = Directory.GetDirectories(Repository.PathTo("src", project))
            .Where(folder => Path.GetFileName(folder) is not ("bin" or "obj"))
            .ToDictionary(folder => Path.GetFileName(folder), folder => Needs(project, folder));
        var left = needs.Keys.ToHashSet();
        while (left.RemoveWhere(folder => !needs[folder].Overlaps(left)) > 0)
        {
        }

        return left;
    }

    private static HashSet<string> Needs(string project, string folder)
    {
        var other = new Regex($@"^using (?:\w+ = )?(?:static )?{Regex.Escape(project)}\.(\w+)", RegexOptions.Multiline);
        return
        [
            .. Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
                .SelectMany(file => other.Matches(File.ReadAllText(file)))
                .Select(m => m.Groups[1].Value)
                .Where(name => name != Path.GetFileName(folder)),
        ];
    }
}
