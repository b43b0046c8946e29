using RebuildApi.Contracts;

namespace RebuildApi.Engine.Snapshots;

/// <summary>Holds a snapshot that came from outside against its family, so that judging it can't stumble.</summary>
public static class SnapshotCheck
{
    /// <summary>The first thing that is wrong, or null.</summary>
    public static SnapshotFault? FirstFault(UnitSnapshot snapshot, FamilyIndex family) =>
        Twice("components", snapshot.Components.Select(c => c.Id))
        ?? Twice("instruments", snapshot.Instruments.Select(i => i.Id))
        ?? snapshot.Components.Select(c => Component(c, family)).FirstOrDefault(f => f is not null)
        ?? snapshot.Placements.Select(p => Placement(p, snapshot, family)).FirstOrDefault(f => f is not null)
        ?? snapshot.Measurements.Select(m => Measurement(m, snapshot, family)).FirstOrDefault(f => f is not null)
        ?? snapshot.Trials.Where(t => !family.Loops.ContainsKey(t.Loop)).Select(t => new SnapshotFault("trials/loop", t.Loop, "a clearance of the family")).FirstOrDefault()
        ?? Policy(snapshot.Policy);

    private static SnapshotFault? Twice(string field, IEnumerable<string> ids) =>
        ids.GroupBy(id => id, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice ? new(field + "/id", twice.Key, "each id once") : null;

    private static SnapshotFault? Component(Component component, FamilyIndex family) =>
        family.Kinds.ContainsKey(component.Kind) ? null : new("components/kind", component.Kind, "a kind of the family");

    private static SnapshotFault? Placement(Placement placement, UnitSnapshot snapshot, FamilyIndex family)
    {
        if (!family.Positions.TryGetValue(placement.Position, out var position))
            return new("placements/position", placement.Position, "a position of the family");
        var part = snapshot.Components.FirstOrDefault(c => c.Id == placement.Component);
        if (part is null)
            return new("placements/component", placement.Component, "the id of a component of the snapshot");
        if (part.Kind != position.Kind)
            return new("placements/component", placement.Component, $"a part of kind {position.Kind} at {position.Id}");
        return placement.Index >= 1 && placement.Index <= position.Quantity
            ? null
            : new("placements/index", FormattableString.Invariant($"{placement.Index}"), FormattableString.Invariant($"1 to {position.Quantity}"));
    }

    private static SnapshotFault? Measurement(Measurement measurement, UnitSnapshot snapshot, FamilyIndex family)
    {
        var part = snapshot.Components.FirstOrDefault(c => c.Id == measurement.Component);
        if (part is null)
            return new("measurements/component", measurement.Component, "the id of a component of the snapshot");
        if (family.CharacteristicOf(part.Kind, measurement.Characteristic) is null)
            return new("measurements/characteristic", measurement.Characteristic, $"a characteristic of {part.Kind}");
        return measurement.Readings.IsDefaultOrEmpty || measurement.Readings.Any(r => r.Si is { } si && !double.IsFinite(si))
            ? new("measurements/readings", "", "at least one reading, of finite values")
            : null;
    }

    private static SnapshotFault? Policy(Policy policy) => policy.Probability is > 0.5 and < 1
        ? null
        : new("policy/probability", FormattableString.Invariant($"{policy.Probability}"), "a probability between 0.5 and 1, both excluded");
}

/// <summary>Something in a snapshot that the family does not know, or that contradicts itself.</summary>
/// <param name="Field">Where.</param>
/// <param name="Got">What stands there.</param>
/// <param name="Allowed">What is allowed.</param>
public sealed record SnapshotFault(string Field, string Got, string Allowed);
