using RebuildApi.Contracts;

namespace RebuildApi.Storage;

/// <summary>A part that the shop can order: one line of its own price list.</summary>
/// <param name="Id">The shop's own number.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Vendor">Who sells it.</param>
/// <param name="VendorNumber">What the vendor calls it, if said.</param>
/// <param name="Price">Price of one without tax, in whole minor units.</param>
/// <param name="Tax">Which tax it bears; none for the usual one of parts.</param>
/// <param name="CoreDeposit">What is held until the old part is handed back, in whole minor units.</param>
/// <param name="LeadDays">Days from order to bench.</param>
/// <param name="Attributes">Attribute to value, as the vendor declares.</param>
/// <param name="Member">Which piece of a series it is, if it is one.</param>
/// <param name="Set">What it comes with, if with anything: parts of one set bear the same name here.</param>
/// <param name="Withdrawn">Whether it is no longer to be ordered.</param>
/// <param name="Version">Row version.</param>
public sealed record Part(
    string Id,
    string Family,
    string Kind,
    string Name,
    string Vendor,
    string? VendorNumber,
    long Price,
    string? Tax,
    long CoreDeposit,
    int LeadDays,
    IReadOnlyDictionary<string, string> Attributes,
    string? Member,
    string? Set,
    bool Withdrawn,
    long Version) : IShopRecord<Part>
{
    /// <inheritdoc/>
    public static ShopTable<Part> Table { get; } = new("part", isEdited: true, StoreJson.Default.Part, isOfUnit: false);

    string? IShopRecord<Part>.OfUnit => null;

    string IShopRecord<Part>.About => Family + "/" + Kind;

    /// <inheritdoc/>
    public Part At(long version) => this with { Version = version };
}
