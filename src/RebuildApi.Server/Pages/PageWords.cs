using System.Collections.Frozen;
using System.Reflection;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>The words of the pages, from a file of one line for each: key, equals sign, words with {names} in braces. One file for each language.</summary>
public sealed class PageWords(string language, FrozenDictionary<string, string> words)
{
    private const string ForScript = "js.";

    /// <summary>English, which is always there.</summary>
    public static PageWords English { get; } = Parse("en", PageAssets.Text("words/en.txt"));

    /// <summary>Language tag (BCP 47).</summary>
    public string Language => language;

    /// <summary>Its keys.</summary>
    public IEnumerable<string> Keys => words.Keys;

    /// <summary>The words of a key.</summary>
    public string this[string key] => words[key];

    /// <summary>The words of a key with its {names} filled in.</summary>
    public string this[string key, params (string Name, string Value)[] with] =>
        with.Aggregate(words[key], (text, w) => text.Replace("{" + w.Name + "}", w.Value, StringComparison.Ordinal));

    /// <summary>The words of a key that may stand for something of a family that is gone.</summary>
    public string Or(string key, string otherwise) => words.GetValueOrDefault(key) ?? otherwise;

    /// <summary>An outcome by word and, through its class, by shape and colour.</summary>
    public string Outcome<T>(T outcome)
        where T : struct, Enum => $"<span class=\"o o-{Kebab.Of(outcome)}\">{Page.Safe(this["o." + Kebab.Of(outcome)])}</span>";

    /// <summary>A class of damage; families and standards name more than a file of words can know.</summary>
    public string Damage(string id) => words.GetValueOrDefault("damage." + id) ?? id.Replace('-', ' ');

    /// <summary>What the standard calls a class of damage, where a published one does (ISO 15243 for bearings, ISO 10825-1 for gears); null otherwise.</summary>
    public string? DamageClass(string id) => words.GetValueOrDefault("class." + id);

    /// <summary>A class of damage in plain words, with the standard's behind them.</summary>
    public string Damaged(string id) => DamageClass(id) is { } standard ? $"{Damage(id)} ({standard})" : Damage(id);

    /// <summary>The words that a page's scripts use, without their prefix; no others, since a page is sent whole each time.</summary>
    /// <param name="scripts">The scripts beside the one that all share.</param>
    public IReadOnlyDictionary<string, string> Script(params string[] scripts)
    {
        var code = string.Concat(scripts.Prepend("queue.js").Select(PageAssets.Script));
        return words.Where(w => w.Key.StartsWith(ForScript, StringComparison.Ordinal)).Select(w => (Key: w.Key[ForScript.Length..], w.Value))
            .Where(w => code.Contains("say." + w.Key, StringComparison.Ordinal) || (w.Key.Contains('-', StringComparison.Ordinal) && code.Contains($"say['{w.Key.Split('-')[0]}-'", StringComparison.Ordinal)))
            .ToDictionary(w => w.Key, w => w.Value, StringComparer.Ordinal);
    }

    /// <summary>The words of whoever asks for a page.</summary>
    public static ValueTask<PageWords?> BindAsync(HttpContext http, ParameterInfo parameter) =>
        ValueTask.FromResult<PageWords?>(http.RequestServices.GetRequiredService<Tongues>().For(http));

    /// <summary>Reads a file of words; lines that begin with <c>#</c> are remarks.</summary>
    /// <param name="language">Its language tag.</param>
    /// <param name="file">Its text.</param>
    /// <param name="others">Where words come from that the file lacks.</param>
    public static PageWords Parse(string language, string file, PageWords? others = null)
    {
        var own = file.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(line => !line.StartsWith('#')).Select(line => line.Split(" = ", 2)).Where(pair => pair.Length == 2)
            .DistinctBy(pair => pair[0]).ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
        foreach (var key in others?.Keys ?? [])
            own.TryAdd(key, others![key]);
        return new PageWords(language, own.ToFrozenDictionary(StringComparer.Ordinal));
    }
}
