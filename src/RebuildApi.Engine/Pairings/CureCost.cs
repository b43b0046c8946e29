using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>What a cure costs.</summary>
/// <param name="NewParts">How many parts are exchanged.</param>
/// <param name="Minutes">Bench time of the family's assembly steps on parts of those kinds.</param>
/// <param name="Price">Price of the parts in minor units of the shop's currency; null when any price is not known.</param>
public sealed record CureCost(int NewParts, decimal Minutes, long? Price);

/// <summary>Price of one part of a kind that has what is asked of it, in minor units; none when it is not known.</summary>
/// <param name="kind">The kind.</param>
/// <param name="asked">What the part must have.</param>
public delegate long? PriceOfPart(string kind, ImmutableArray<CureStep> asked);

/// <summary>Works out what cures cost, and ranks them.</summary>
public static class CureCosts
{
    /// <summary>The cost of a cure.</summary>
    /// <param name="cure">The cure.</param>
    /// <param name="family">Its family.</param>
    /// <param name="priceOf">What a part costs, where that is known; a family has no prices.</param>
    public static CureCost Of(Cure cure, FamilyIndex family, PriceOfPart? priceOf = null)
    {
        var positions = cure.Steps.Select(s => s.Position).Distinct(StringComparer.Ordinal)
            .Where(family.Positions.ContainsKey).Select(p => family.Positions[p]).ToArray();
        var prices = Array.ConvertAll(positions, p => priceOf?.Invoke(p.Kind, [.. cure.Steps.Where(s => s.Position == p.Id)]) * p.Quantity);
        return new CureCost(
            positions.Sum(p => p.Quantity),
            positions.Select(p => p.Kind).Distinct(StringComparer.Ordinal).Sum(k => MinutesOf(k, family.Family)),
            positions.Length > 0 && Array.TrueForAll(prices, p => p is not null) ? prices.Sum() : null);
    }

    /// <summary>Those that are sufficient first; by price when all of them have one, else by new parts and then by minutes. Equals stay in their order.</summary>
    public static ImmutableArray<Cure> CheapestFirst(ImmutableArray<Cure> cures, FamilyIndex family, PriceOfPart? priceOf = null)
    {
        var costs = cures.Select(c => (Cure: c, Cost: Of(c, family, priceOf))).ToArray();
        var isPriced = costs.Where(c => c.Cure.Sufficient).All(c => c.Cost.Price is not null);
        return
        [
            .. costs.OrderByDescending(c => c.Cure.Sufficient)
                .ThenBy(c => isPriced ? c.Cost.Price ?? long.MaxValue : 0)
                .ThenBy(c => c.Cost.NewParts)
                .ThenBy(c => c.Cost.Minutes)
                .Select(c => c.Cure),
        ];
    }

    /// <summary>An operation that neither changes a characteristic nor removes damage is a step of assembly: it comes with every exchange.</summary>
    private static decimal MinutesOf(string kind, Family family) =>
        family.Operations.Where(o => o.Kind == kind && o.Effects.IsEmpty && o.Mends.IsEmpty).Sum(o => o.Minutes);
}
