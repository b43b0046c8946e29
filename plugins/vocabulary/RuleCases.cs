namespace FamilyWords;

/// <summary>Puts beside a family's own worked cases those that fire each limit, clearance and pairing on every side.</summary>
internal static class RuleCases
{
    /// <summary>The family with all its cases.</summary>
    /// <param name="family">The family with the cases that were written by hand.</param>
    /// <param name="step">The smallest step in which its readings are said.</param>
    /// <param name="sound">What a healthy gearbox of the family shows, by attribute.</param>
    public static Family Proven(this Family family, Length step, IReadOnlyDictionary<string, string> sound) => family with
    {
        Golden = [.. family.Golden, .. LimitCases.Of(family, step), .. ClearanceCases.Of(family, step), .. new PairingCases(family, sound, step).All],
    };

    /// <summary>What healthy parts show in every family, with what is said otherwise.</summary>
    public static IReadOnlyDictionary<string, string> Sound(params (string Attribute, string Value)[] otherwise) => otherwise.Aggregate(s_sound, (all, o) => all.SetItem(o.Attribute, o.Value));

    private static readonly ImmutableDictionary<string, string> s_sound = new Dictionary<string, string>
    {
        ["drive-flank"] = "sound",
        ["coast-flank"] = "sound",
        ["teeth"] = "n36",
        ["grip"] = "grips",
        ["lining"] = "carbon",
        ["key-slot"] = "sharp",
        ["input-pad"] = "light",
        ["output-pad"] = "light",
        ["type"] = "deep-groove",
        ["clearance-group"] = "cn",
        ["material"] = "bronze",
        ["surface"] = "as-made",
        ["supply"] = "selected",
        ["additive"] = "mild",
        ["grade"] = "marsh-75",
        ["supplied"] = "as-set",
        ["vintage"] = "early",
        ["ratio-set"] = "wide",
        ["form"] = "back-tapered",
        ["stop"] = "present",
        ["hand"] = "left",
        ["input.hand"] = "right",
        ["third.hand"] = "right",
    }.ToImmutableDictionary(StringComparer.Ordinal);
}
