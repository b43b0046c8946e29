using System.Collections.Frozen;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>How much of each thing on the shelf is kept for units. A reservation that lapsed or was let go keeps nothing.</summary>
public sealed class Reserved
{
    private readonly FrozenDictionary<string, int> _counts;

    private Reserved(FrozenDictionary<string, int> counts) => _counts = counts;

    /// <summary>What is kept at a time; for one unit's own eyes its own reservations are left out.</summary>
    public static Reserved Of(IEnumerable<Reservation> reservations, DateTimeOffset now, string? butFor = null) => new(
        reservations.Where(r => r.Holds(now) && r.Unit != butFor)
            .GroupBy(r => r.Stock, StringComparer.Ordinal).ToFrozenDictionary(g => g.Key, g => g.Sum(r => r.Count), StringComparer.Ordinal));

    /// <summary>How many of one thing are kept.</summary>
    public int Count(string stock) => _counts.GetValueOrDefault(stock);
}
