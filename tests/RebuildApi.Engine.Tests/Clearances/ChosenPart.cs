using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>Chooses parts in test snapshots.</summary>
internal static class ChosenPart
{
    /// <summary>A new piece that is to go in, named after its position; its member is the first of its series unless the attribute says otherwise.</summary>
    public static SnapshotBuilder With(this SnapshotBuilder snapshot, string position, string kind, string label, string member = "ring-1", int index = 1) => new(snapshot.Snapshot with
    {
        Components = snapshot.Snapshot.Components.Add(new Component(
            index == 1 ? position : $"{position}-{index}", 1, kind, Origin.New, ImmutableSortedDictionary<string, string>.Empty.Add("member", member), label)),
        Placements = snapshot.Snapshot.Placements.Add(new Placement(
            position, index, index == 1 ? position : $"{position}-{index}", PlacementRole.Chosen, Facing.Unspecified, null)),
    });
}
