using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>The unit as it would be with a way chosen for each place.</summary>
internal sealed class PlanSnapshot(UnitView view)
{
    private readonly ILookup<(string, int), Placement> _placements = view.Snapshot.Placements.ToLookup(p => (p.Position, p.Index));

    public EstimateBook Book(IEnumerable<(PlanPlace Place, Fit Fit)> picks) => new(new UnitView(Of(picks), view.Family, string.Empty));

    /// <summary>What was found stays on record where it was found; what is chosen counts before it.</summary>
    public UnitSnapshot Of(IEnumerable<(PlanPlace Place, Fit Fit)> picks)
    {
        var chosen = picks.SelectMany(p => p.Fit.Parts.Select((part, i) => (p.Place, Index: p.Place.Index + i, p.Fit, Part: part))).ToArray();
        var parts = chosen.Select(c => c.Part.Component).DistinctBy(c => c.Id).ToDictionary(c => c.Id, StringComparer.Ordinal);
        var filled = picks.SelectMany(p => p.Place.Series is null ? [(p.Place.Position.Id, p.Place.Index)] : Enumerable.Range(1, p.Place.Position.Quantity).Select(i => (p.Place.Position.Id, i))).ToHashSet();
        var snapshot = view.Snapshot;
        return snapshot with
        {
            Components = [.. snapshot.Components.Where(c => !parts.ContainsKey(c.Id)), .. parts.Values],
            Placements =
            [
                .. snapshot.Placements.Where(p => p.Role == PlacementRole.Found || !filled.Contains((p.Position, p.Index))),
                .. chosen.Select(c => Placed(c.Place.Position.Id, c.Index, c.Part.Component.Id)),
            ],
            Measurements = [.. snapshot.Measurements, .. New(chosen.SelectMany(c => c.Part.Measurements), snapshot.Measurements, m => m.Id)],
            Findings = [.. snapshot.Findings, .. New(chosen.SelectMany(c => c.Part.Findings), snapshot.Findings, f => f.Id)],
            Instruments = [.. snapshot.Instruments, .. New(chosen.SelectMany(c => c.Part.Instruments), snapshot.Instruments, i => i.Id)],
        };
    }

    private static IEnumerable<T> New<T>(IEnumerable<T> items, ImmutableArray<T> known, Func<T, string> id) =>
        items.DistinctBy(id).ExceptBy(known.Select(id), id);

    /// <summary>A part that goes in is put in the way round that the family's rules ask for.</summary>
    private Placement Placed(string position, int index, string component)
    {
        var was = _placements[(position, index)].MaxBy(p => p.Role);
        var mark = _placements[(position, index)].LastOrDefault(p => p.Component == component)?.IndexMark;
        return new Placement(position, index, component, PlacementRole.Chosen, FacingOf(position) ?? was?.Facing ?? Facing.Unspecified, mark);
    }

    private Facing? FacingOf(string position) =>
        view.Family.Family.Pairings.FirstOrDefault(r => r.Options.ContainsKey("facing") && r.Roles.Values.Contains(position))?.Options["facing"] switch
        {
            "input" => Facing.Input,
            "output" => Facing.Output,
            _ => null,
        };
}
