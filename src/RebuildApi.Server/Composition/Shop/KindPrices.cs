using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>What the shop's price list asks for a part of a kind: cures are ranked by it where every part of them has a price.</summary>
/// <param name="Rates">How the shop charges.</param>
/// <param name="Parts">What can still be ordered for the family.</param>
/// <param name="Edition">Hash of the prices, for entity tags.</param>
public sealed record KindPrices(Rates Rates, ImmutableArray<Part> Parts, string Edition)
{
    /// <summary>The prices for one family.</summary>
    public static async ValueTask<KindPrices> Of(IStore store, FamilyIndex family, CancellationToken cancellation)
    {
        var (rates, id) = (await store.Rates(cancellation), family.Family.Version.Id);
        var parts = (await store.All<Part>(ShopFilter.Every, cancellation)).Where(p => p.Family == id && !p.Withdrawn && p.Member is null).ToImmutableArray();
        return new KindPrices(rates, parts, Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((object)new { rates.Currency, parts }))));
    }

    /// <summary>The cheapest part of a kind with all the attributes asked for; none when the list has no such part.</summary>
    public long? Of(string kind, ImmutableArray<CureStep> asked)
    {
        var fitting = Parts.Where(p => p.Kind == kind && asked.All(a => a.Attribute is null || a.Value is null || p.Attributes.GetValueOrDefault(a.Attribute) == a.Value)).ToArray();
        return fitting.Length == 0 ? null : fitting.Min(p => p.Price);
    }
}
