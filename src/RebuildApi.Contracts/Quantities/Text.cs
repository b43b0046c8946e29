using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>Words shown to a person, keyed by language. English is always there.</summary>
/// <param name="Key">A stable key, for translations kept elsewhere.</param>
/// <param name="ByCulture">Language tag (<c>en</c>) to words.</param>
public sealed record Text(string Key, IReadOnlyDictionary<string, string> ByCulture)
{
    /// <summary>Words in English.</summary>
    public static Text English(string key, string words) => new(key, ImmutableSortedDictionary<string, string>.Empty.Add("en", words));

    /// <summary>The words in a language, else in its parent language, else in English, else the key.</summary>
    public string In(string culture)
    {
        if (ByCulture.TryGetValue(culture, out var exact))
            return exact;
        var dash = culture.IndexOf('-', StringComparison.Ordinal);
        if (dash > 0 && ByCulture.TryGetValue(culture[..dash], out var parent))
            return parent;
        return ByCulture.TryGetValue("en", out var english) ? english : Key;
    }
}
