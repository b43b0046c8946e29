using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Pairings;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>What the shelf and the price list offer, as parts that can be judged.</summary>
public static class ShopCandidates
{
    private const string Bench = "shelf";

    /// <summary>A part of the price list: new, with what its vendor declares.</summary>
    public static Candidate Of(Part part) => Candidate.Of(new Component(part.Id, 1, part.Kind, Origin.New, part.Attributes, part.Name));

    /// <summary>A part on the shelf, with what was read and seen of it.</summary>
    public static Candidate Of(StockItem item, ImmutableArray<InstrumentState> instruments) => new(
        new Component(item.Id, 1, item.Kind, item.Origin, item.Attributes, item.Id),
        [.. item.Readings.Select(r => new Measurement($"{item.Id}/{r.Characteristic}", item.Id, 1, r.Characteristic, r.Readings, Taken(item, r.Instrument), null))],
        item.Inspected ? [new Finding(item.Id + "/sound", item.Id, 1, new Sound(), null, Taken(item, null), null)] : [],
        instruments);

    /// <summary>The instruments that readings of the shelf name.</summary>
    public static async ValueTask<ImmutableArray<InstrumentState>> Instruments(this IStore store, IEnumerable<StockItem> items, CancellationToken cancellation)
    {
        var found = ImmutableArray.CreateBuilder<InstrumentState>();
        foreach (var id in items.SelectMany(i => i.Readings).Select(r => r.Instrument).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            if (await store.Instrument(id, cancellation) is { } instrument)
                found.Add(instrument.State);
        }

        return found.ToImmutable();
    }

    private static Taken Taken(StockItem item, string? instrument) => new(instrument, null, item.Person, Bench, item.Time, null);
}

/// <summary>The shelf as a source of parts: what is not kept for another unit.</summary>
public sealed class PartsOnShelf(IStore store, TimeProvider time) : ICandidateSource
{
    /// <inheritdoc/>
    public async ValueTask<ImmutableArray<OfferedPart>> Find(PartWanted wanted, CancellationToken cancellation)
    {
        var items = await store.All<StockItem>(new ShopFilter(About: $"{wanted.Family.Family.Version.Id}/{wanted.Kind}"), cancellation);
        var reserved = Reserved.Of(await store.All<Reservation>(ShopFilter.Every, cancellation), time.GetUtcNow(), wanted.For.Unit.Id);
        var instruments = await store.Instruments(items, cancellation);
        return [.. items.Where(i => i.Count > reserved.Count(i.Id)).Select(i => new OfferedPart(ShopCandidates.Of(i, instruments), PartFrom.Shelf))];
    }
}

/// <summary>The price list as a source of parts: what can still be ordered.</summary>
public sealed class PartsToOrder(IStore store) : ICandidateSource
{
    /// <inheritdoc/>
    public async ValueTask<ImmutableArray<OfferedPart>> Find(PartWanted wanted, CancellationToken cancellation)
    {
        var parts = await store.All<Part>(new ShopFilter(About: $"{wanted.Family.Family.Version.Id}/{wanted.Kind}"), cancellation);
        return [.. parts.Where(p => !p.Withdrawn).Select(p => new OfferedPart(ShopCandidates.Of(p), PartFrom.Catalogue))];
    }
}
