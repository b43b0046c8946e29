using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Reads what the shop's price list asks for the kinds of a family.</summary>
public static class PriceReader
{
    /// <summary>The prices for one family.</summary>
    public static async ValueTask<KindPrices> Prices(this IStore store, FamilyIndex family, CancellationToken cancellation)
    {
        var (rates, id) = (await store.Rates(cancellation), family.Family.Version.Id);
        var parts = (await store.All<Part>(ShopFilter.Every, cancellation)).Where(p => p.Family == id && !p.Withdrawn && p.Member is null).ToImmutableArray();
        return new KindPrices(rates, parts, Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((object)new { rates.Currency, parts }))));
    }
}
