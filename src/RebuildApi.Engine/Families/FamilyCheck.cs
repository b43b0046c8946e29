using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Families;

/// <summary>
/// Whether a declared family hangs together: ids, references, windows, loops, series, meshes, and something to inspect at every position. Run before a
/// family is indexed, since an index wants a valid one.
/// </summary>
public static class FamilyCheck
{
    /// <summary>Everything wrong or doubtful in a family; empty when it is sound.</summary>
    /// <param name="family">Any declaration, however bad.</param>
    /// <returns>
    /// Diagnostics whose file is the family's id, whose field is a path such as <c>loops[third-end-play].terms[2]</c>, and whose line and column are 0.
    /// References are checked only when ids are unique, and arithmetic only when references resolve.
    /// </returns>
    public static ImmutableArray<Diagnostic> Check(Family family)
    {
        var report = new FamilyReport(family.Version.Id);
        IdCheck.Run(family, report);
        if (report.HasErrors)
            return report.All;
        ReferenceCheck.Run(family, report);
        LinkCheck.Run(family, report);
        BuildCheck.Run(family, report);
        if (report.HasErrors)
            return report.All;
        PairingCheck.Run(family, report);
        LimitCheck.Run(family, report);
        MeshCheck.Run(family, report);
        SeriesCheck.Run(family, report);
        ClosureCheck.Run(family, report);
        InspectionCheck.Run(family, report);
        SiblingCheck.Run(family, report);
        return report.All;
    }
}
