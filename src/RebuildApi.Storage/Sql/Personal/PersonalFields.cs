using System.Collections.Frozen;
using System.Collections.Immutable;

namespace RebuildApi.Storage.Sql.Personal;

/// <summary>The texts that may name a customer, by kind of entry. They stand apart from the chain.</summary>
internal static class PersonalFields
{
    private static readonly FrozenDictionary<string, ImmutableArray<string>> Always = new Dictionary<string, ImmutableArray<string>>
    {
        ["unit"] = ["customer", "words"],
        ["approval"] = ["by"],
        ["comeback"] = ["words"],
        ["attachment"] = ["note"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    // Reasons and notes belong to the work; they go only when the name stands in them.
    private static readonly FrozenDictionary<string, ImmutableArray<string>> WhereNamed = new Dictionary<string, ImmutableArray<string>>
    {
        ["decision"] = ["reason"],
        ["confirmation"] = ["reason"],
        ["stage"] = ["note"],
        ["sign-off"] = ["note"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The fields of a kind; empty for most.</summary>
    public static ImmutableArray<string> Of(string kind) =>
        Always.TryGetValue(kind, out var always) ? always : WhereNamed.GetValueOrDefault(kind, []);

    /// <summary>Whether a kind tells of the customer by its nature, so that its texts go even when the name does not stand in them.</summary>
    public static bool IsTheirs(string kind) => Always.ContainsKey(kind);

    /// <summary>Every kind that has any.</summary>
    public static ImmutableArray<string> Kinds { get; } = [.. Always.Keys, .. WhereNamed.Keys];
}
