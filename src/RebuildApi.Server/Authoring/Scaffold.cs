using System.Reflection;
using System.Text.RegularExpressions;

namespace RebuildApi.Server.Authoring;

/// <summary>Writes what a family author starts from. Nothing that is there already is written over.</summary>
public static partial class Scaffold
{
    private const string ProjectEnding = ".csproj.txt";
    private const string IdPlace = "ID-OF-FAMILY";
    private const string NamePlace = "NameOfFamily";
    private const string ContractPlace = "PathOfContract";
    private const string EnginePlace = "PathOfEngine";

    /// <summary>Writes the files of one sort of start.</summary>
    /// <param name="sort"><c>yaml</c> or <c>code</c>.</param>
    /// <param name="id">Id of the family.</param>
    /// <param name="folder">Where to.</param>
    /// <param name="output">Told what was written.</param>
    /// <exception cref="IOException">A file is there already.</exception>
    public static async Task<int> Write(string sort, string id, string folder, TextWriter output)
    {
        if (!IdPattern().IsMatch(id))
            throw new ArgumentException($"'{id}' is not an id: lower-case letters and digits, in words joined by hyphens.", nameof(id));
        var assembly = typeof(Scaffold).Assembly;
        var prefix = $"scaffold/{sort}/";
        foreach (var resource in assembly.GetManifestResourceNames().Where(n => n.StartsWith(prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            var path = Path.Combine(folder, Filled(NameOf(resource[prefix.Length..]), id));
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            await using var file = new FileStream(path, FileMode.CreateNew);
            await using var writer = new StreamWriter(file);
            await writer.WriteAsync(Filled(await Text(assembly, resource), id));
            await output.WriteLineAsync(path);
        }

        return 0;
    }

    /// <summary>Projects lie here under another ending, so that no build takes them for one of this house.</summary>
    private static string NameOf(string resource) => resource.EndsWith(ProjectEnding, StringComparison.Ordinal) ? resource[..^".txt".Length] : resource;

    private static async Task<string> Text(Assembly assembly, string resource)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return await reader.ReadToEndAsync();
    }

    private static string Filled(string text, string id) => text
        .Replace(IdPlace, id, StringComparison.Ordinal)
        .Replace(NamePlace, string.Concat(id.Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..])), StringComparison.Ordinal)
        .Replace(ContractPlace, Path.Combine(AppContext.BaseDirectory, "RebuildApi.Contracts.dll"), StringComparison.Ordinal)
        .Replace(EnginePlace, Path.Combine(AppContext.BaseDirectory, "RebuildApi.Engine.dll"), StringComparison.Ordinal);

    [GeneratedRegex(@"\A[a-z][a-z0-9]*(-[a-z0-9]+)*\z", RegexOptions.CultureInvariant)]
    private static partial Regex IdPattern();
}
