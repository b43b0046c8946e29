using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>What the shop's price list asks for a part of a kind: cures are ranked by it where every part of them has a price.</summary>
/// <param name="Rates">How the shop charges.</param>
/// <param name="Parts">What can still be ordered for the family.</param>
/// <param name="Edition">Hash of the prices, for entity tags.</param>
public sealed record KindPrices(Rates Rates, ImmutableArray<Part> Parts, string Edition)
{
    /// <summary>The cheapest part of a kind with all the attributes asked for; none when the list has no such part.</summary>
    public long? Of(string kind, ImmutableArray<CureStep> asked)
    {
        var fitting = Parts.Where(p => p.Kind == kind && asked.All(a => a.Attribute is null || a.Value is null || p.Attributes.GetValueOrDefault(a.Attribute) == a.Value)).ToArray();
        return fitting.Length == 0 ? null : fitting.Min(p => p.Price);
    }
}
