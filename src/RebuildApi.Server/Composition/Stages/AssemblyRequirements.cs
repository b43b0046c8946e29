using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Stages;

/// <summary>What must be recorded of the gearbox as it was built.</summary>
public static class AssemblyRequirements
{
    /// <summary>Every part that was chosen is recorded as fitted.</summary>
    public static readonly Requirement ChosenFitted = new("chosen-fitted", "What was chosen is fitted", Leave.Exception, f =>
        f.File.Placements.Where(p => p.Role == PlacementRole.Chosen && !IsFitted(p, f.File)).Select(p => new Unmet(
            Subjects.Of(p), $"{p.Component} was chosen for {Subjects.Of(p)} and is not recorded as fitted.", "POST to /components of the unit with role fitted.")));

    /// <summary>Each clearance that can be read on the assembly was read on it. Where the family does not say which, every one that can be.</summary>
    public static readonly Requirement AsBuiltReadings = new("as-built-readings", "Clearances are read as built", Leave.Exception, f =>
    {
        var built = f.Since(UnitStages.Assembly);
        var read = f.File.Trials.Where(t => t.Taken.At >= built).Select(t => t.Loop).ToHashSet(StringComparer.Ordinal);
        return f.Judged.Family.Family.Loops.Where(l => l.Trial != TrialMethod.None && !read.Contains(l.Id)).Select(l => new Unmet(
            l.Id, $"{l.Name.In("en")} was not read since it went together.", "POST to /trials of the unit what was read with the pieces that are fitted.", l.Criticality == Criticality.SafetyCritical));
    });

    private static bool IsFitted(Placement chosen, UnitFile file) => file.Placements.Any(p =>
        p.Role == PlacementRole.Fitted && p.Component == chosen.Component && p.Position == chosen.Position && p.Index == chosen.Index);
}
