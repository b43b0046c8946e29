using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>
/// The part of a unit that a rule can read: its own positions, and those whose dimensions go into what is derived there. Thousands of combinations are
/// judged on that little instead of on the whole unit.
/// </summary>
internal static class Reading
{
    /// <summary>The positions, and all that their derived dimensions are worked out from.</summary>
    public static ImmutableHashSet<string> Of(IEnumerable<string> positions, FamilyIndex family)
    {
        var reached = positions.Where(family.Positions.ContainsKey).ToHashSet(StringComparer.Ordinal);
        var open = new Queue<string>(reached);
        while (open.TryDequeue(out var position))
        {
            foreach (var next in Sources(family.Kinds[family.Positions[position].Kind]).Where(family.Positions.ContainsKey).Where(reached.Add))
                open.Enqueue(next);
        }

        return [.. reached];
    }

    /// <summary>The unit with nothing but these positions in it.</summary>
    public static UnitView Trimmed(UnitView view, ImmutableHashSet<string> positions)
    {
        var snapshot = view.Snapshot;
        var placements = snapshot.Placements.Where(p => positions.Contains(p.Position)).ToImmutableArray();
        var there = placements.Select(p => p.Component).ToHashSet(StringComparer.Ordinal);
        return new UnitView(
            snapshot with
            {
                Placements = placements,
                Components = [.. snapshot.Components.Where(c => there.Contains(c.Id))],
                Measurements = [.. snapshot.Measurements.Where(m => there.Contains(m.Component))],
                Findings = [.. snapshot.Findings.Where(f => there.Contains(f.Component))],
                Trials = [],
            },
            view.Family,
            string.Empty);
    }

    private static IEnumerable<string> Sources(PartKind kind) => kind.Characteristics.SelectMany(Inputs.Of).Select(a => a.Position);
}
