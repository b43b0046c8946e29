namespace RebuildApi.Engine.Pairings.Library;

/// <summary>Combinations of attribute values, each written <c>role=value+role=value</c>. A role that is not named may have any value that is known.</summary>
internal static class Combinations
{
    /// <summary>The first combination that the parts have, or null. Every role named must be known for a match.</summary>
    public static string? Match(PairingCase parts, string attribute, IEnumerable<string> combinations) =>
        combinations.FirstOrDefault(c => Pairs(c).All(p => parts.Has(p.Role) && parts.See(p.Role, attribute).Value == p.Value));

    /// <summary>Whether a combination could still come true: no value that is known speaks against it.</summary>
    public static bool CouldMatch(PairingCase parts, string attribute, string combination) =>
        Pairs(combination).All(p => parts.Has(p.Role) && (parts.See(p.Role, attribute).Value is null || parts.See(p.Role, attribute).Value == p.Value));

    /// <summary>The role and value of each part of a combination.</summary>
    public static IEnumerable<(string Role, string Value)> Pairs(string combination) => combination
        .Split('+', StringSplitOptions.TrimEntries)
        .Select(p => p.Split('=', 2, StringSplitOptions.TrimEntries))
        .Select(p => (p[0], p.Length == 2 ? p[1] : string.Empty));
}
