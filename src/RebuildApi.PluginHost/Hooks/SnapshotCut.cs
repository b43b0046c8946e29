using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Hooks;

/// <summary>
/// A snapshot cut down to what a hook declared that it reads: the parts placed in its positions, what was read and seen on them, the trial assemblies made
/// of nothing else, the instruments used, and the shop's policy with the limits at those positions. The complaint is left out: it belongs to no position.
/// </summary>
internal static class SnapshotCut
{
    /// <summary>Cuts a snapshot down to a scope.</summary>
    public static UnitSnapshot To(HookScope scope, UnitSnapshot snapshot)
    {
        var positions = scope.Positions.ToImmutableHashSet(StringComparer.Ordinal);
        ImmutableArray<Placement> placements = [.. snapshot.Placements.Where(p => positions.Contains(p.Position))];
        var parts = placements.Select(p => p.Component).ToImmutableHashSet(StringComparer.Ordinal);
        ImmutableArray<Measurement> measurements = [.. snapshot.Measurements.Where(m => parts.Contains(m.Component))];
        ImmutableArray<TrialAssembly> trials = [.. snapshot.Trials.Where(t => IsWithin(t, positions))];
        ImmutableArray<Finding> findings = [.. snapshot.Findings.Where(f => parts.Contains(f.Component))];
        var used = measurements.Select(m => m.Taken).Concat(trials.Select(t => t.Taken)).Concat(findings.Select(f => f.Taken))
            .Select(t => t.Instrument).OfType<string>().ToImmutableHashSet(StringComparer.Ordinal);
        return snapshot with
        {
            Complaint = [],
            Components = [.. snapshot.Components.Where(c => parts.Contains(c.Id))],
            Placements = placements,
            Measurements = measurements,
            Trials = trials,
            Findings = findings,
            Instruments = [.. snapshot.Instruments.Where(i => used.Contains(i.Id))],
            Policy = snapshot.Policy with { Limits = [.. snapshot.Policy.Limits.Where(l => IsWithin(l, positions))] },
        };
    }

    private static bool IsWithin(TrialAssembly trial, ImmutableHashSet<string> positions) =>
        trial.Fitted.Length + trial.Pieces.Length > 0
        && trial.Fitted.All(f => positions.Contains(f.Position))
        && trial.Pieces.All(p => positions.Contains(p.Position));

    private static bool IsWithin(ShopLimit limit, ImmutableHashSet<string> positions) =>
        Address.TryParse(limit.Subject) is { } at && positions.Contains(at.Position);
}
