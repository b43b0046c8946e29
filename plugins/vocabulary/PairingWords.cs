namespace FamilyWords;

/// <summary>Words for a relation between parts.</summary>
internal static class PairingWords
{
    public static PairingRule Pairing(string id, string name, string template) => new(
        id, Text.English($"pairing.{id}", name), template,
        ImmutableSortedDictionary<string, string>.Empty, ImmutableSortedDictionary<string, Quantity>.Empty, ImmutableSortedDictionary<string, string>.Empty,
        Compatibility.Incompatible, Severity.Malfunction, Text.English($"pairing.{id}.consequence", ""), [], Trade);

    public static PairingRule Role(this PairingRule rule, string role, string filledBy) =>
        rule with { Roles = rule.Roles.ToImmutableSortedDictionary(StringComparer.Ordinal).SetItem(role, filledBy) };

    public static PairingRule Parameter(this PairingRule rule, string name, Quantity value) =>
        rule with { Parameters = rule.Parameters.ToImmutableSortedDictionary(StringComparer.Ordinal).SetItem(name, value) };

    public static PairingRule Parameter(this PairingRule rule, string name, Length value) => rule.Parameter(name, new Exact(value));

    public static PairingRule Option(this PairingRule rule, string name, string value) =>
        rule with { Options = rule.Options.ToImmutableSortedDictionary(StringComparer.Ordinal).SetItem(name, value) };

    /// <summary>What it costs when it does not hold, and what then happens.</summary>
    public static PairingRule Broken(this PairingRule rule, Compatibility verdict, Severity severity, string consequence) => rule with
    {
        WhenBroken = verdict,
        Severity = severity,
        Consequence = Text.English($"pairing.{rule.Id}.consequence", consequence),
    };

    /// <summary>Something that mends it by itself: the steps make it compatible.</summary>
    public static PairingRule MendedBy(this PairingRule rule, string id, string words, params CureStep[] steps) => rule.With(id, words, true, steps);

    /// <summary>Something that helps, or that the steps alone don't settle.</summary>
    public static PairingRule EasedBy(this PairingRule rule, string id, string words, params CureStep[] steps) => rule.With(id, words, false, steps);

    /// <summary>Fit a part that shows this.</summary>
    public static CureStep Fit(string position, string attribute, string value) => new(position, attribute, value, null, null);

    /// <summary>Fit a part that measures this.</summary>
    public static CureStep FitWithin(string position, string characteristic, Limits within) => new(position, null, null, characteristic, within);

    private static PairingRule With(this PairingRule rule, string id, string words, bool sufficient, CureStep[] steps) => rule with
    {
        Cures = rule.Cures.Add(new Cure(id, Text.English($"pairing.{rule.Id}.{id}", words), sufficient, [.. steps])),
    };
}
