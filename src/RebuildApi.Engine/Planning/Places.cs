using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>Lists every place of a unit with all ways to fill it: the part found, its reworks, the candidates, the pieces of a series.</summary>
internal sealed class Places(EstimateBook book, PlanRequest request)
{
    private readonly ILookup<string, PlanCandidate> _byKind = request.Candidates
        .Where(c => !request.Limits.Without.Contains(c.Id))
        .ToLookup(c => c.Part.Component.Kind, StringComparer.Ordinal);

    private readonly ImmutableDictionary<string, OfSeries> _series = book.View.Family.Family.Loops
        .SelectMany(l => l.Terms).Select(t => t.Of).OfType<OfSeries>()
        .GroupBy(s => s.Position, StringComparer.Ordinal)
        .ToImmutableDictionary(g => g.Key, g => g.MinBy(s => s.MaxPieces)!, StringComparer.Ordinal);

    private UnitView View => book.View;

    /// <summary>Every place, in stripping order.</summary>
    /// <param name="cuts">Whether the parts found may be cut to bring clearances right.</param>
    public ImmutableArray<PlanPlace> All(bool cuts) =>
    [
        .. View.Family.Family.Positions.OrderBy(p => p.StripOrder).SelectMany(position => _series.TryGetValue(position.Id, out var of)
            ? [PieceFits.Of(position, of, View, request)]
            : Enumerable.Range(1, position.Quantity).Where(i => Counts(position, i)).Select(i => Place(position, i, cuts))),
    ];

    private bool Counts(Position position, int index) =>
        index <= (position.Fewest ?? position.Quantity) || View.At(position.Id).Any(p => p.Placement.Index == index);

    private PlanPlace Place(Position position, int index, bool cuts)
    {
        var here = View.At(position.Id).FirstOrDefault(p => p.Placement.Index == index);
        var offered = _byKind[position.Kind].Where(c => c.Positions.IsDefaultOrEmpty || c.Positions.Contains(position.Id)).Select(c => Offered(c, position.Id, index)).ToArray();
        IEnumerable<Fit> own = here is null ? [] : Own(here, cuts);
        IEnumerable<Fit> unlisted = View.Family.Kinds[position.Kind].SingleUse && offered.Length == 0 ? [Unlisted(position, index)] : [];
        return new PlanPlace(position, index, null, [.. own, .. offered, .. unlisted]);
    }

    private IEnumerable<Fit> Own(PlacedComponent here, bool cuts)
    {
        var known = KnownOf(here.Component, View);
        var isFound = here.Placement.Role == PlacementRole.Found;
        var found = new Fit(isFound ? FoundId : here.Component.Id, SourceOf(here.Component), [known]) { Set = FoundId };
        return [found, .. isFound ? Reworks.Of(here, found, book, cuts) : []];
    }

    public const string FoundId = "found";

    private static PartSource SourceOf(Component component) => component.Origin switch
    {
        Origin.Unit => PartSource.Found,
        Origin.New => PartSource.Catalogue,
        Origin.Shelf => PartSource.Shelf,
        _ => PartSource.Core,
    };

    /// <summary>A part with everything that the unit's snapshot says of it.</summary>
    public static Candidate KnownOf(Component component, UnitView view) => new(
        component,
        [.. view.Snapshot.Measurements.Where(m => m.Component == component.Id && m.Revision == component.Revision)],
        [.. view.FindingsOf(component)],
        view.Snapshot.Instruments);

    private static Fit Offered(PlanCandidate offer, string position, int index) => new(
        offer.Id, offer.Source, [offer.Source == PartSource.Catalogue ? Instance(offer.Part, Subjects.Of(position, index)) : offer.Part])
    {
        Price = offer.Price,
        LeadDays = offer.LeadDays,
        Vendor = offer.Vendor,
        Draws = offer.OnHand is { } many ? [(offer.Id, many)] : [],
        Set = offer.Set,
    };

    /// <summary>A catalogue part is many alike; each that goes in is one of its own.</summary>
    private static Candidate Instance(Candidate part, string place)
    {
        var id = $"{part.Component.Id}@{place}";
        return part with
        {
            Component = part.Component with { Id = id, Origin = Origin.New },
            Measurements = [.. part.Measurements.Select(m => m with { Id = $"{m.Id}@{place}", Component = id })],
            Findings = [.. part.Findings.Select(f => f with { Id = $"{f.Id}@{place}", Component = id })],
        };
    }

    private static Fit Unlisted(Position position, int index)
    {
        var part = new Component($"new-{position.Kind}@{Subjects.Of(position.Id, index)}", 1, position.Kind, Origin.New, ImmutableSortedDictionary<string, string>.Empty, null);
        return new Fit($"new-{position.Kind}", PartSource.ToBeBought, [Candidate.Of(part)]) { Price = null };
    }
}
