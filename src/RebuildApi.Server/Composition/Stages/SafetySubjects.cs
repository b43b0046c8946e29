using RebuildApi.Contracts;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>Where a person can be hurt: characteristics and clearances that the family calls safety-critical, and pairings whose failure is a danger.</summary>
public static class SafetySubjects
{
    /// <summary>Whether what is not known of a part can hurt a person.</summary>
    public static bool IsSafety(PartAnswer part, FamilyIndex family) =>
        family.Kinds[family.Positions[part.Position].Kind].Characteristics.Any(c => c.Criticality == Criticality.SafetyCritical && IsOpen(part, c));

    /// <summary>Whether a clearance can.</summary>
    public static bool IsSafety(string loop, FamilyIndex family) => family.Loops[loop].Criticality == Criticality.SafetyCritical;

    /// <summary>Whether a pairing can.</summary>
    public static bool IsSafety(PairingVerdict pairing, FamilyIndex family) => family.Pairings.GetValueOrDefault(pairing.Rule)?.Severity == Severity.Danger;

    private static bool IsOpen(PartAnswer part, Characteristic characteristic)
    {
        var own = part.Verdicts.Where(v => v.Subject.Split('#')[0].EndsWith("/" + characteristic.Id, StringComparison.Ordinal)).ToList();
        return own.Count == 0 || own.Any(v => v.Outcome != Outcome.Conforming);
    }
}
