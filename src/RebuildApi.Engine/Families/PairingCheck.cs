using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>Every pairing rule uses its template as the template asks, and its cures are parts that the family declares.</summary>
internal static class PairingCheck
{
    private const string Low = "low";

    /// <summary>Checks a family whose ids are unique and whose references resolve.</summary>
    public static void Run(Family family, FamilyReport report)
    {
        var index = new FamilyIndex(family);
        foreach (var rule in family.Pairings)
        {
            foreach (var problem in Templates.Check(rule, index))
                report.Error($"pairings[{rule.Id}].{problem.Field}", problem.Code, problem.Message);
            foreach (var (name, low) in rule.Parameters.Where(p => p.Key.EndsWith(Low, StringComparison.Ordinal)))
                InOrder(rule, name, low, report);
        }
    }

    /// <summary>Parameters <c>x-low</c> and <c>x-high</c> are the ends of one window.</summary>
    private static void InOrder(PairingRule rule, string name, Quantity low, FamilyReport report)
    {
        var upsideDown = rule.Parameters.TryGetValue(name[..^Low.Length] + "high", out var high) && low.InSi > high.InSi;
        report.Require(!upsideDown, $"pairings[{rule.Id}].parameters.{name}", "window-upside-down", $"'{name}' is above its high end.");
    }
}
