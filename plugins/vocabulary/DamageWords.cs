namespace FamilyWords;

/// <summary>Words for what damage means. Written for any extent, any place and any duty until told otherwise.</summary>
internal static class DamageWords
{
    /// <summary>The part goes.</summary>
    public static DamagePolicy Scrap(string kind, string damage, string? advice = null) =>
        Policy(kind, damage, Outcome.Nonconforming, Disposition.Replace, advice);

    /// <summary>The part goes back.</summary>
    public static DamagePolicy Keep(string kind, string damage, string? advice = null) =>
        Policy(kind, damage, Outcome.Conforming, Disposition.Reuse, advice);

    /// <summary>The part goes back after a piece of work that mends it.</summary>
    public static DamagePolicy Mend(string kind, string damage, string? advice = null) =>
        Policy(kind, damage, Outcome.Nonconforming, Disposition.Rework, advice);

    public static DamagePolicy When(this DamagePolicy policy, string extent) => (policy with { Extent = extent }).Keyed();

    public static DamagePolicy On(this DamagePolicy policy, string place) => (policy with { Where = place }).Keyed();

    public static DamagePolicy For(this DamagePolicy policy, string duty) => (policy with { Duty = duty }).Keyed();

    private static DamagePolicy Policy(string kind, string damage, Outcome outcome, Disposition disposition, string? advice) =>
        new DamagePolicy(kind, damage, "*", "*", "*", outcome, disposition, advice is null ? null : Text.English("", advice), Trade).Keyed();

    private static DamagePolicy Keyed(this DamagePolicy p) =>
        p.Advice is null ? p : p with { Advice = p.Advice with { Key = $"damage.{p.Kind}.{p.DamageClass}.{p.Extent}.{p.Where}.{p.Duty}" } };
}
