using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Families;

/// <summary>Every pairing rule uses its template as the template asks, and its cures are parts that the family declares.</summary>
internal static class PairingCheck
{
    /// <summary>Checks a family whose ids are unique and whose references resolve.</summary>
    public static void Run(Family family, FamilyReport report)
    {
        var index = new FamilyIndex(family);
        foreach (var rule in family.Pairings)
        {
            foreach (var problem in Templates.Check(rule, index))
                report.Error($"pairings[{rule.Id}].{problem.Field}", problem.Code, problem.Message);
        }
    }
}
