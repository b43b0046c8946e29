using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>Something on the shelf: new parts and pieces by count, or one measured used part.</summary>
/// <param name="Id">What is written on it or its bin.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">New, a used part from the shelf, or out of a core.</param>
/// <param name="Count">How many there are.</param>
/// <param name="Price">What one is charged at without tax, in whole minor units.</param>
/// <param name="Part">Its number in the price list, if it has one.</param>
/// <param name="Member">Which piece of a series it is, if it is one.</param>
/// <param name="Set">What it ran with, if with anything: parts of one set bear the same name here.</param>
/// <param name="Core">The unit that it was taken from, if said.</param>
/// <param name="Bin">Where it lies, if said.</param>
/// <param name="Attributes">Attribute to value, as found.</param>
/// <param name="Readings">What was read of it.</param>
/// <param name="Inspected">Whether it was inspected as the family asks and found sound.</param>
/// <param name="Person">Who says so.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Version">Row version.</param>
public sealed record StockItem(
    string Id,
    string Family,
    string Kind,
    Origin Origin,
    int Count,
    long Price,
    string? Part,
    string? Member,
    string? Set,
    string? Core,
    string? Bin,
    IReadOnlyDictionary<string, string> Attributes,
    ImmutableArray<StockReading> Readings,
    bool Inspected,
    string Person,
    DateTimeOffset Time,
    long Version) : IShopRecord<StockItem>
{
    /// <inheritdoc/>
    public static ShopTable<StockItem> Table { get; } = new("stock", isEdited: true, StoreJson.Default.StockItem, isOfUnit: false);

    string? IShopRecord<StockItem>.OfUnit => null;

    string IShopRecord<StockItem>.About => Family + "/" + Kind;

    /// <inheritdoc/>
    public StockItem At(long version) => this with { Version = version };
}

/// <summary>What was read of one characteristic of a part on the shelf.</summary>
/// <param name="Characteristic">Which.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Instrument">With what, if said.</param>
public sealed record StockReading(string Characteristic, ImmutableArray<Reading> Readings, string? Instrument);

/// <summary>Something on the shelf that is kept for a unit until a time.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">For which unit.</param>
/// <param name="Stock">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Person">Who asked for it.</param>
/// <param name="Until">When it lapses, UTC.</param>
/// <param name="Released">Whether it was let go before.</param>
/// <param name="Version">Row version.</param>
public sealed record Reservation(
    string Id, string Unit, string Stock, int Count, string Person, DateTimeOffset Until, bool Released, long Version) : IShopRecord<Reservation>
{
    /// <inheritdoc/>
    public static ShopTable<Reservation> Table { get; } = new("reservation", isEdited: true, StoreJson.Default.Reservation);

    string IShopRecord<Reservation>.OfUnit => Unit;

    string IShopRecord<Reservation>.About => Stock;

    /// <summary>Whether it holds at a time.</summary>
    public bool Holds(DateTimeOffset now) => !Released && now < Until;

    /// <inheritdoc/>
    public Reservation At(long version) => this with { Version = version };
}
