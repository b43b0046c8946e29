using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>Which positions a rule looks at.</summary>
internal static class Reach
{
    /// <summary>Whether a position fills a role of the rule, or belongs to the family's set that the rule names.</summary>
    public static bool Touches(this PairingRule rule, string position, Family family) =>
        rule.Roles.Values.Any(r => Place.Parse(r).Position == position)
        || family.Sets.Any(s => s.Id == rule.Options.GetValueOrDefault("set") && s.Positions.Contains(position));
}
