using RebuildApi.Contracts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Makes the one snapshot that the engine sees from what is stored.</summary>
public static class UnitSnapshots
{
    /// <summary>The snapshot of a unit under the shop's policy as it stands for its family: each part at its newest revision.</summary>
    public static UnitSnapshot Of(UnitFile file) => new(
        file.Unit.Id,
        file.Unit.Family,
        file.Unit.Complaint,
        [.. file.Components.GroupBy(c => c.Id, StringComparer.Ordinal).Select(g => g.MaxBy(c => c.Revision)!).OrderBy(c => c.Id, StringComparer.Ordinal)],
        file.Placements,
        file.Measurements,
        file.Trials,
        file.Findings,
        [.. file.Instruments.Select(i => i.State)],
        file.Policy.Policy.Of(file.Unit.Family.Id));
}
