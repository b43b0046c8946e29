using System.Collections.Immutable;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>Which parts would run at a place with what is chosen already: those that the shop knows of, or those that a request speaks of.</summary>
public sealed class CandidateSearch(Judging judging, IEnumerable<ICandidateSource> sources)
{
    /// <summary>Reads the place that an address names, in the unit as it stands.</summary>
    /// <exception cref="ProblemException">The family has no such place, or the rules that the unit is pinned to are not loaded.</exception>
    public (UnitView View, PartWanted Wanted) At(UnitFile file, string position)
    {
        var view = judging.View(file);
        var place = Place.Parse(position);
        if (!view.Family.Positions.TryGetValue(place.Position, out var known) || place.Index < 1 || place.Index > known.Quantity)
            throw new ProblemException(Problems.UnknownPlace, "The family of this unit has no such position.");
        return (view, new PartWanted(file, view.Family, place, known.Kind));
    }

    /// <summary>Every part that any source offers.</summary>
    public async ValueTask<ImmutableArray<OfferedPart>> Offered(PartWanted wanted, CancellationToken cancellation)
    {
        var offered = ImmutableArray.CreateBuilder<OfferedPart>();
        foreach (var source in sources)
            offered.AddRange(await source.Find(wanted, cancellation));
        return offered.ToImmutable();
    }

    /// <summary>Judges parts at the place, best first.</summary>
    public static ImmutableArray<CandidateWire> Judge(UnitView view, PartWanted wanted, ImmutableArray<OfferedPart> offered, Display show)
    {
        var byId = offered.ToDictionary(o => o.Candidate.Component.Id, StringComparer.Ordinal);
        var verdicts = CompatibilitySearch.For(wanted.Place.Position, offered.Select(o => o.Candidate), new EstimateBook(view), wanted.Place.Index);
        return [.. verdicts.Select(v => Shown(v, byId[v.Component.Id], view.Family, show))];
    }

    private static CandidateWire Shown(CandidateVerdict verdict, OfferedPart part, FamilyIndex family, Display show) => new(
        verdict.Component.Id,
        verdict.Component.Revision,
        verdict.Component.Kind,
        verdict.Component.Origin,
        verdict.Component.Label,
        part.From,
        part.Unit,
        part.Placement is { } placement ? Subjects.Of(placement.Position, placement.Index) : null,
        part.Placement?.Role,
        verdict.Outcome,
        [.. verdict.Pairings.Select(p => PairingOutcomeWire.From(p, family, show))],
        [.. verdict.Settles.Select(s => s.ToString())]);
}
