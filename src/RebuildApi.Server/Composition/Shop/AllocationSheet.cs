using System.Collections.Immutable;
using RebuildApi.Engine.Allocation;
using RebuildApi.Engine.Reasons;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Writes an allocation down as it goes out: what goes where, what the others lack, and what came near.</summary>
/// <param name="rates">The shop's currency.</param>
/// <param name="looked">What was held against each place.</param>
/// <param name="reservations">What is kept for units.</param>
public sealed class AllocationSheet(Rates rates, IReadOnlyDictionary<(string Unit, string Place), ImmutableArray<ShelfFit>> looked, ImmutableArray<Reservation> reservations)
{
    private const int MostNear = 5;

    /// <summary>The whole answer.</summary>
    public AllocationWire Of(AllocationAnswer found) => new(
        found.Completed,
        [.. found.Assigned.Select(a => new AssignedWire(Item(a.Part), a.Unit, a.Place, MoneyWire.Of(a.Cost, rates)))],
        MoneyWire.Of(found.Cost, rates), found.IsProven, found.MostUnits,
        [.. found.Misses.Select(m => new AllocationMissWire(m.Unit, m.Lacking, ReasonText.Words(m.Reason), [.. m.Lacking.SelectMany(p => Near(m.Unit, p, found))]))],
        [.. found.Purchases.Select(p => new AllocationPurchaseWire(p.Place, p.Units, ReasonText.Words(p.Reason)))],
        [.. found.Reasons.Select(Wire.ReasonWire.From)],
        Cautions.Standing);

    /// <summary>What of the right kind is on the shelf, and why the unit does not get it: what would do first.</summary>
    private IEnumerable<NearMissWire> Near(string unit, string place, AllocationAnswer found) =>
        looked[(unit, place)].OrderBy(f => f.WhyNot is not null).ThenBy(f => f.Cost).ThenBy(f => f.Item.Id, StringComparer.Ordinal).Take(MostNear)
            .Select(f => new NearMissWire(place, f.Item.Id, f.WhyNot ?? Elsewhere(f.Item.Id, unit, found)));

    private string Elsewhere(string stock, string unit, AllocationAnswer found)
    {
        var takers = found.Assigned.Where(a => Item(a.Part) == stock).Select(a => a.Unit).Concat(reservations.Where(r => r.Stock == stock && r.Unit != unit).Select(r => r.Unit));
        var others = takers.Distinct().Order(StringComparer.Ordinal).ToArray();
        return others.Length > 0 ? $"It would do, and goes to {string.Join(", ", others)}." : "It would do; the unit lacks something else too.";
    }

    private static string Item(string part) => part.Split('#')[0];
}
