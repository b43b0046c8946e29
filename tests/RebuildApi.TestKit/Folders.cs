using System.Text.RegularExpressions;

namespace RebuildApi.TestKit;

/// <summary>What the folders of a project need of each other: what their files name in using directives, or in front of a type.</summary>
public static partial class Folders
{
    /// <summary>The folders that lie on a circle, or that need one that does.</summary>
    public static IReadOnlyCollection<string> OnCircles(string project)
    {
        var texts = Directory.GetDirectories(Repository.PathTo("src", project))
            .Where(folder => Path.GetFileName(folder) is not ("bin" or "obj"))
            .ToDictionary(folder => Path.GetFileName(folder), folder => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Select(Code).ToArray());
        var types = texts.ToDictionary(f => f.Key, f => f.Value.SelectMany(text => Declared().Matches(text)).Select(m => m.Groups[1].Value).ToHashSet());
        var needs = texts.ToDictionary(f => f.Key, f => f.Value.SelectMany(text => Named(project, text, types)).Where(other => other != f.Key).ToHashSet());
        var left = needs.Keys.ToHashSet();
        while (left.RemoveWhere(folder => !needs[folder].Overlaps(left)) > 0)
        {
        }

        return left;
    }

    private static IEnumerable<string> Named(string project, string text, Dictionary<string, HashSet<string>> types) =>
        Regex.Matches(text, $@"^using (?:\w+ = )?(?:static )?{Regex.Escape(project)}\.(\w+)", RegexOptions.Multiline).Select(m => m.Groups[1].Value)
            .Concat(Qualified().Matches(text).Where(m => types.TryGetValue(m.Groups[1].Value, out var there) && there.Overlaps(m.Groups[2].Value.Split('.'))).Select(m => m.Groups[1].Value));

    private static string Code(string file) => Comment().Replace(File.ReadAllText(file), "");

    [GeneratedRegex(@"//[^\n]*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"\b(?:class|record|struct|interface|enum)\s+(\w+)")]
    private static partial Regex Declared();

    [GeneratedRegex(@"(?<![\w.])(\w+)\.(\w+(?:\.\w+)*)")]
    private static partial Regex Qualified();
}
