using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pieces;

/// <summary>Lists the packs that a series makes. Of packs of one thickness only the one of fewest pieces stays, then the cheapest.</summary>
public static class Packs
{
    /// <summary>All packs of 1 to <paramref name="maxPieces"/> pieces, thinnest first.</summary>
    /// <param name="series">The thicknesses that exist.</param>
    /// <param name="maxPieces">At least 1.</param>
    /// <param name="available">How many of each member there are; a member that is not named has none. None means: any number can be had.</param>
    /// <param name="prices">Member to price in minor units, where known.</param>
    /// <exception cref="ArgumentException">Fewer than one piece, or two members with one id.</exception>
    public static ImmutableArray<Pack> Of(
        Series series, int maxPieces, IReadOnlyDictionary<string, int>? available = null, IReadOnlyDictionary<string, long>? prices = null)
    {
        if (maxPieces < 1)
            throw new ArgumentException("A pack has at least one piece.", nameof(maxPieces));
        if (series.Members.Select(m => m.Id).Distinct(StringComparer.Ordinal).Count() != series.Members.Length)
            throw new ArgumentException($"The series {series.Id} names a member twice.", nameof(series));
        var best = new Dictionary<(long Thickness, int Pieces), Pack> { [(0, 0)] = new([], Length.Zero, 0) };
        foreach (var member in series.Members)
            AddMember(best, member, maxPieces, available is null ? maxPieces : available.GetValueOrDefault(member.Id), prices);
        return
        [
            .. best.Where(b => b.Key.Pieces > 0)
                .GroupBy(b => b.Key.Thickness)
                .OrderBy(g => g.Key)
                .Select(g => g.OrderBy(b => b.Key.Pieces).First().Value),
        ];
    }

    /// <summary>
    /// All packs, those of one thickness made of different pieces too: where pieces are few, the one that leaves the right piece for another position
    /// may be the one to take.
    /// </summary>
    /// <inheritdoc cref="Of"/>
    public static ImmutableArray<Pack> All(
        Series series, int maxPieces, IReadOnlyDictionary<string, int> available, IReadOnlyDictionary<string, long>? prices = null)
    {
        if (maxPieces < 1)
            throw new ArgumentException("A pack has at least one piece.", nameof(maxPieces));
        IEnumerable<Pack> packs = [new Pack([], Length.Zero, 0)];
        foreach (var member in series.Members)
            packs = packs.SelectMany(p => Grown(p, member, Math.Min(available.GetValueOrDefault(member.Id), maxPieces - p.Members.Length), prices)).ToArray();
        return [.. packs.Where(p => !p.Members.IsEmpty).OrderBy(p => p.Thickness).ThenBy(p => p.Members.Length)];
    }

    private static IEnumerable<Pack> Grown(Pack pack, SeriesMember member, int most, IReadOnlyDictionary<string, long>? prices)
    {
        yield return pack;
        for (var count = 1; count <= most; count++)
            yield return pack = Grow(pack, member, prices);
    }

    private static void AddMember(
        Dictionary<(long Thickness, int Pieces), Pack> best, SeriesMember member, int maxPieces, int most, IReadOnlyDictionary<string, long>? prices)
    {
        foreach (var ((thickness, pieces), pack) in best.ToArray())
        {
            var grown = pack;
            for (var count = 1; count <= most && pieces + count <= maxPieces; count++)
            {
                grown = Grow(grown, member, prices);
                var key = (grown.Thickness.Nanometres, pieces + count);
                if (!best.TryGetValue(key, out var present) || IsCheaper(grown, present))
                    best[key] = grown;
            }
        }
    }

    private static Pack Grow(Pack pack, SeriesMember member, IReadOnlyDictionary<string, long>? prices)
    {
        long? price = prices is not null && prices.TryGetValue(member.Id, out var p) ? p : null;
        return new Pack(pack.Members.Add(member.Id), pack.Thickness + member.Thickness, pack.Cost + price);
    }

    /// <summary>An unknown price is never the cheaper one; of equals the first found stays, so the answer does not depend on chance.</summary>
    private static bool IsCheaper(Pack pack, Pack than) => (pack.Cost ?? long.MaxValue) < (than.Cost ?? long.MaxValue);
}
