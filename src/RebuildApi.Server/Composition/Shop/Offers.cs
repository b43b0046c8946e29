using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>What the shop can put into units of one family: its price list, and what is free on its shelf for one of them.</summary>
/// <param name="Rates">How the shop charges.</param>
/// <param name="Candidates">The parts, each under <c>order/</c> or <c>shelf/</c> and its id.</param>
/// <param name="Pieces">The rings, shims and washers: from the shelf where enough lie there, else to be ordered.</param>
/// <param name="Parts">The parts to order, by that id.</param>
/// <param name="Shelf">What lies on the shelf, by that id.</param>
/// <param name="PieceIds">Series and member to that id.</param>
/// <param name="Sha256">Hash of all this, so that a plan made from other prices shows.</param>
public sealed record Offers(
    Rates Rates,
    ImmutableArray<PlanCandidate> Candidates,
    ImmutableArray<PieceOffer> Pieces,
    FrozenDictionary<string, Part> Parts,
    FrozenDictionary<string, StockItem> Shelf,
    FrozenDictionary<(string Series, string Member), string> PieceIds,
    string Sha256)
{
    /// <summary>What comes before the id of something on the shelf.</summary>
    public const string FromShelf = "shelf/";

    private const string Order = "order/";

    /// <summary>Reads them for one unit, or for none in particular.</summary>
    public static async ValueTask<Offers> Of(IStore store, FamilyIndex family, string? unit, DateTimeOffset now, CancellationToken cancellation)
    {
        var id = family.Family.Version.Id;
        var parts = (await store.All<Part>(ShopFilter.Every, cancellation)).Where(p => p.Family == id && !p.Withdrawn && family.Kinds.ContainsKey(p.Kind)).ToArray();
        var stock = (await store.All<StockItem>(ShopFilter.Every, cancellation)).Where(s => s.Family == id && family.Kinds.ContainsKey(s.Kind)).ToArray();
        var reserved = Reserved.Of(await store.All<Reservation>(ShopFilter.Every, cancellation), now, unit);
        var free = stock.Select(s => s with { Count = s.Count - reserved.Count(s.Id) }).Where(s => s.Count > 0).ToArray();
        return Of(await store.Rates(cancellation), parts, free, await store.Instruments(free, cancellation), family);
    }

    private static Offers Of(Rates rates, Part[] parts, StockItem[] shelf, ImmutableArray<InstrumentState> instruments, FamilyIndex family)
    {
        var pieces = family.Family.Series.SelectMany(s => s.Members.Select(m => Piece(s, m.Id, parts, shelf))).OfType<(string Id, PieceOffer Offer)>().ToArray();
        return new Offers(
            rates,
            [
                .. parts.Where(p => p.Member is null).Select(p => new PlanCandidate(
                    Order + p.Id, PartSource.Catalogue, Named(ShopCandidates.Of(p), Order + p.Id), p.Price, p.LeadDays, p.Vendor, null) { Set = p.Set }),
                .. shelf.Where(s => s.Member is null).Select(s => new PlanCandidate(
                    FromShelf + s.Id, s.Origin == Origin.Core ? PartSource.Core : PartSource.Shelf, Named(ShopCandidates.Of(s, instruments), FromShelf + s.Id), s.Price, 0, null, s.Count)
                { Set = s.Set }),
            ],
            [.. pieces.Select(p => p.Offer)],
            parts.ToFrozenDictionary(p => Order + p.Id, StringComparer.Ordinal),
            shelf.ToFrozenDictionary(s => FromShelf + s.Id, StringComparer.Ordinal),
            pieces.ToFrozenDictionary(p => (p.Offer.Series, p.Offer.Member), p => p.Id),
            Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((object)new { rates, parts, shelf }))));
    }

    /// <summary>A piece from the shelf where enough lie there for any pack; else the cheapest to order; else what lies there.</summary>
    private static (string Id, PieceOffer Offer)? Piece(Series series, string member, Part[] parts, StockItem[] shelf)
    {
        const int enough = 4;
        var lying = shelf.Where(s => s.Kind == series.Kind && s.Member == member).OrderByDescending(s => s.Count).ThenBy(s => s.Id, StringComparer.Ordinal).FirstOrDefault();
        var listed = parts.Where(p => p.Kind == series.Kind && p.Member == member).OrderBy(p => p.Price).ThenBy(p => p.Id, StringComparer.Ordinal).FirstOrDefault();
        if (lying is not null && (lying.Count >= enough || listed is null))
            return (FromShelf + lying.Id, new PieceOffer(series.Id, member, lying.Price, 0, null, lying.Count) { Attributes = Known(lying.Attributes) });
        return listed is null ? null : (Order + listed.Id, new PieceOffer(series.Id, member, listed.Price, listed.LeadDays, listed.Vendor, null) { Attributes = Known(listed.Attributes) });
    }

    private static ImmutableSortedDictionary<string, string> Known(IReadOnlyDictionary<string, string> attributes) =>
        attributes.ToImmutableSortedDictionary(a => a.Key, a => a.Value, StringComparer.Ordinal);

    // A name with a slash is one that no part of a unit can have.
    private static Candidate Named(Candidate candidate, string id) => candidate with
    {
        Component = candidate.Component with { Id = id },
        Measurements = [.. candidate.Measurements.Select(m => m with { Component = id })],
        Findings = [.. candidate.Findings.Select(f => f with { Component = id })],
    };
}
