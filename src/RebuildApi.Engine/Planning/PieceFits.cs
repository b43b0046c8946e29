using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Pieces;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Planning;

/// <summary>The rings, shims and washers that may go to a place: those there, unless they are single-use, and every pack that the series makes.</summary>
internal static class PieceFits
{
    /// <summary>More packs than this are not told apart by what they are made of, only by their thickness.</summary>
    private const int MostPacks = 2000;

    public static PlanPlace Of(Position position, OfSeries of, UnitView view, PlanRequest request)
    {
        var series = view.Family.Series[of.Series];
        var offers = request.Pieces.Where(p => p.Series == series.Id && !request.Limits.Without.Contains($"{series.Id}/{p.Member}")).ToDictionary(p => p.Member, StringComparer.Ordinal);
        var packs = offers.Count == 0 ? Packs.Of(series, of.MaxPieces) : Offered(series, of.MaxPieces, offers);
        var bought = packs.Select((p, i) => (Order: i, Fit: Fit(p, position, series, offers))).GroupBy(LikenessOf, StringComparer.Ordinal).SelectMany(Alike);
        return new PlanPlace(position, 1, series.Id, [.. Present(position, view), .. bought.OrderBy(f => f.Order).Select(f => f.Fit)]);
    }

    /// <summary>Packs of as many pieces with the same attributes differ in a length alone: the first of them is judged for all.</summary>
    private static IEnumerable<(int Order, Fit Fit)> Alike(IEnumerable<(int Order, Fit Fit)> alike)
    {
        var first = alike.First();
        return alike.Select(f => f.Order == first.Order ? f : (f.Order, f.Fit with { JudgedAs = first.Fit }));
    }

    private static string LikenessOf((int Order, Fit Fit) pack) => string.Join('|', pack.Fit.Parts.Select(p => string.Join(
        ',', p.Component.Attributes.Where(a => a.Key != PlacedPieces.MemberAttribute).OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => $"{a.Key}={a.Value}"))));

    private static ImmutableArray<Pack> Offered(Series series, int maxPieces, Dictionary<string, PieceOffer> offers)
    {
        var many = offers.Values.ToDictionary(o => o.Member, o => o.OnHand is { } n ? Math.Min(n, maxPieces) : maxPieces, StringComparer.Ordinal);
        var prices = offers.Values.Where(o => o.Price is not null).ToDictionary(o => o.Member, o => o.Price!.Value, StringComparer.Ordinal);
        var isScarce = offers.Values.Any(o => o.OnHand < 2 * maxPieces);
        if (!isScarce || Math.Pow(offers.Count + 1, maxPieces) > MostPacks)
            return Packs.Of(series, maxPieces, many, prices);
        return Packs.All(series, maxPieces, many, prices);
    }

    private static IEnumerable<Fit> Present(Position position, UnitView view)
    {
        var there = view.At(position.Id).ToImmutableArray();
        var isFound = there.All(p => p.Placement.Role == PlacementRole.Found);
        if (there.IsEmpty || (isFound && view.Family.Kinds[position.Kind].SingleUse))
            return [];
        return [new Fit(isFound ? Places.FoundId : there[0].Component.Id, PartSource.Found, [.. there.Select(p => Places.KnownOf(p.Component, view))]) { Set = Places.FoundId }];
    }

    private static Fit Fit(Pack pack, Position position, Series series, Dictionary<string, PieceOffer> offers)
    {
        var known = pack.Members.Select(m => offers.GetValueOrDefault(m)).ToArray();
        return new Fit(
            string.Join('+', pack.Members.Select(m => $"{series.Id}/{m}")),
            offers.Count == 0 ? PartSource.ToBeBought : known.All(o => o is { LeadDays: 0, OnHand: not null }) ? PartSource.Shelf : PartSource.Catalogue,
            [.. pack.Members.Select((m, i) => Candidate.Of(Piece(m, i + 1, position, series, known[i])))])
        {
            Price = pack.Cost,
            LeadDays = known.Max(o => o?.LeadDays ?? 0),
            Vendor = known.Select(o => o?.Vendor).FirstOrDefault(v => v is not null),
            Draws = [.. pack.Members.Distinct().Where(m => offers.GetValueOrDefault(m)?.OnHand is not null).Select(m => ($"{series.Id}/{m}", offers[m].OnHand!.Value))],
            Members = pack.Members,
        };
    }

    private static Component Piece(string member, int index, Position position, Series series, PieceOffer? offer) => new(
        $"{series.Id}/{member}@{Subjects.Of(position.Id, index)}", 1, series.Kind, Origin.New,
        (offer?.Attributes ?? ImmutableSortedDictionary<string, string>.Empty).SetItem(PlacedPieces.MemberAttribute, member), null);
}
