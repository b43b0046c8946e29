using System.Collections.Frozen;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>The words of the pages, from a file of one line for each: key, equals sign, words with {names} in braces. One file for each language.</summary>
public sealed class PageWords(string language, FrozenDictionary<string, string> words)
{
    private const string ForScript = "js.";

    /// <summary>English, which is always there.</summary>
    public static PageWords English { get; } = Read("en");

    /// <summary>Language tag (BCP 47).</summary>
    public string Language => language;

    /// <summary>The words of a key.</summary>
    public string this[string key] => words[key];

    /// <summary>The words of a key with its {names} filled in.</summary>
    public string this[string key, params (string Name, string Value)[] with] =>
        with.Aggregate(words[key], (text, w) => text.Replace("{" + w.Name + "}", w.Value, StringComparison.Ordinal));

    /// <summary>An outcome by word and, through its class, by shape and colour.</summary>
    public string Outcome<T>(T outcome)
        where T : struct, Enum => $"<span class=\"o o-{Kebab.Of(outcome)}\">{Page.Safe(this["o." + Kebab.Of(outcome)])}</span>";

    /// <summary>The words that scripts use, without their prefix.</summary>
    public IReadOnlyDictionary<string, string> Script => words
        .Where(w => w.Key.StartsWith(ForScript, StringComparison.Ordinal))
        .ToDictionary(w => w.Key[ForScript.Length..], w => w.Value, StringComparer.Ordinal);

    private static PageWords Read(string language) => new(language, PageAssets.Text($"words/{language}.txt")
        .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(line => line.Split(" = ", 2))
        .ToFrozenDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal));
}
