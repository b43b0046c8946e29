using System.Collections.Immutable;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>A part that the shop has to order for the plans that were chosen.</summary>
/// <param name="Part">The part, as the price list has it.</param>
/// <param name="Quantity">How many, beyond what lies free on the shelf.</param>
/// <param name="OnShelf">How many of what is needed lie free on the shelf under this number.</param>
/// <param name="Units">The units that need it.</param>
public sealed record ToOrder(Part Part, int Quantity, int OnShelf, ImmutableArray<string> Units)
{
    /// <summary>Everything that the plans need together, without what lies free on the shelf; vendor by vendor.</summary>
    /// <param name="plans">The chosen plan of each unit that is still to be built.</param>
    /// <param name="parts">The price list.</param>
    /// <param name="stock">The shelf.</param>
    /// <param name="kept">What of it is kept for a unit.</param>
    public static ImmutableArray<ToOrder> Of(IEnumerable<KeptPlan> plans, IEnumerable<Part> parts, IEnumerable<StockItem> stock, Reserved kept)
    {
        var known = parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var free = stock.Where(s => s.Part is not null).GroupBy(s => s.Part!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Sum(s => Math.Max(0, s.Count - kept.Count(s.Id))), StringComparer.Ordinal);
        return
        [
            .. plans.SelectMany(p => p.Lines.Where(l => l is { Sort: "part", Part: not null, Need: "required" }).Select(l => (p.Unit, Line: l)))
                .GroupBy(x => x.Line.Part!, StringComparer.Ordinal).Where(g => known.ContainsKey(g.Key))
                .Select(g => Of(known[g.Key], (int)g.Sum(x => x.Line.Quantity), free.GetValueOrDefault(g.Key), [.. g.Select(x => x.Unit).Distinct(StringComparer.Ordinal)]))
                .Where(o => o.Quantity > 0).OrderBy(o => o.Part.Vendor, StringComparer.Ordinal).ThenBy(o => o.Part.Id, StringComparer.Ordinal),
        ];
    }

    private static ToOrder Of(Part part, int needed, int free, ImmutableArray<string> units) => new(part, Math.Max(0, needed - free), Math.Min(needed, free), units);
}
