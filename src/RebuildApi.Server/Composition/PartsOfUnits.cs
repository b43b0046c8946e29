using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>The parts that came with the shop's units or were laid aside from them. A unit that left the shop took its parts along.</summary>
public sealed class PartsOfUnits(ShopHistory history) : ICandidateSource
{
    /// <inheritdoc/>
    public async ValueTask<ImmutableArray<OfferedPart>> Find(PartWanted wanted, CancellationToken cancellation)
    {
        var offered = ImmutableArray.CreateBuilder<OfferedPart>();
        await foreach (var file in history.Files(wanted.Family.Family.Version.Id, cancellation))
        {
            if (!UnitStages.IsGone(file.Unit.Stage))
                offered.AddRange(Of(file, wanted));
        }

        return offered.ToImmutable();
    }

    private static IEnumerable<OfferedPart> Of(UnitFile file, PartWanted wanted)
    {
        var isSame = file.Unit.Id == wanted.For.Unit.Id;
        var placements = file.Placements.ToLookup(p => p.Component, StringComparer.Ordinal);
        var there = isSame ? Counting(file, wanted.Place) : null;
        return file.Components
            .Where(c => c.Kind == wanted.Kind && c.Id != there)
            .GroupBy(c => c.Id, StringComparer.Ordinal)
            .Select(revisions => revisions.MaxBy(c => c.Revision)!)
            .Where(c => placements[c.Id].All(p => p.Role != PlacementRole.Fitted))
            .Select(c => new OfferedPart(
                Known(c, file), isSame ? PartFrom.SameUnit : PartFrom.OtherUnit, file.Unit.Id, placements[c.Id].MaxBy(p => p.Role)));
    }

    /// <summary>The part that is in the place now.</summary>
    private static string? Counting(UnitFile file, Place place) =>
        file.Placements.Where(p => p.Position == place.Position && p.Index == place.Index).MaxBy(p => p.Role)?.Component;

    private static Candidate Known(Component component, UnitFile file) => new(
        component,
        [.. file.Measurements.Where(m => m.Component == component.Id)],
        [.. file.Findings.Where(f => f.Component == component.Id)],
        [.. file.Instruments.Select(i => i.State)]);
}
