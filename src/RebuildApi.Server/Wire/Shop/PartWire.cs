using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>A part that the shop can order: one line of its own price list.</summary>
/// <param name="Id">The shop's own number.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Vendor">Who sells it.</param>
/// <param name="VendorNumber">What the vendor calls it.</param>
/// <param name="Price">Price of one without tax.</param>
/// <param name="Tax">Which tax it bears; the usual one of parts where it is not said.</param>
/// <param name="CoreDeposit">What is held until the old part is handed back.</param>
/// <param name="LeadDays">Days from order to bench.</param>
/// <param name="Attributes">Attribute to value, as the vendor declares.</param>
/// <param name="Member">Which piece of a series it is.</param>
/// <param name="Set">What it comes with: parts of one set bear the same name here.</param>
/// <param name="Withdrawn">Whether it is no longer to be ordered.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record PartWire(
    string Id,
    string Family,
    string Kind,
    string Name,
    string Vendor,
    string? VendorNumber,
    MoneyWire Price,
    string? Tax,
    MoneyWire CoreDeposit,
    int LeadDays,
    IReadOnlyDictionary<string, string> Attributes,
    string? Member,
    string? Set,
    bool Withdrawn,
    long Version)
{
    /// <summary>From the store.</summary>
    public static PartWire From(Part p, Rates rates) => new(
        p.Id, p.Family, p.Kind, p.Name, p.Vendor, p.VendorNumber, MoneyWire.Of(p.Price, rates), p.Tax, MoneyWire.Of(p.CoreDeposit, rates), p.LeadDays,
        p.Attributes, p.Member, p.Set, p.Withdrawn, p.Version);
}

/// <summary>A part to be put on the price list, or one row of a price list.</summary>
/// <param name="Id">The shop's own number.</param>
/// <param name="Family">The family whose kind it is.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Vendor">Who sells it.</param>
/// <param name="Price">Price of one without tax.</param>
/// <param name="VendorNumber">What the vendor calls it.</param>
/// <param name="Tax">Which tax it bears; none for the usual one of parts.</param>
/// <param name="CoreDeposit">What is held until the old part is handed back.</param>
/// <param name="LeadDays">Days from order to bench.</param>
/// <param name="Attributes">Attribute to value, as the vendor declares. What is left out is unknown, and unknown is never good.</param>
/// <param name="Member">Which piece of a series it is.</param>
/// <param name="Set">What it comes with: parts of one set bear the same name here.</param>
/// <param name="Withdrawn">Whether it is no longer to be ordered.</param>
/// <param name="Version">The version that the row was exported at; when it is said, a part that was changed since is not overwritten.</param>
public sealed record PartRequest(
    [Id] string Id,
    [Id] string Family,
    [Id] string Kind,
    [Words(100)] string Name,
    [Words(100)] string Vendor,
    MoneyRequest Price,
    [Words(60)] string? VendorNumber = null,
    [Id] string? Tax = null,
    MoneyRequest? CoreDeposit = null,
    [Between(0, 3650)] int LeadDays = 0,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Words(64)] string? Member = null,
    [Words(64)] string? Set = null,
    bool Withdrawn = false,
    [Between(0, 2_000_000_000)] int? Version = null);

/// <summary>A price list to be taken over.</summary>
/// <param name="Rows">Its rows.</param>
public sealed record PartsRequest([Entries(1, 5000)] ImmutableArray<PartRequest> Rows) : IRows<PartRequest>;

/// <summary>Changes of a part; what is left out stays, null takes away.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Vendor">Who sells it.</param>
/// <param name="VendorNumber">What the vendor calls it.</param>
/// <param name="Price">Price of one without tax.</param>
/// <param name="Tax">Which tax it bears.</param>
/// <param name="CoreDeposit">What is held until the old part is handed back.</param>
/// <param name="LeadDays">Days from order to bench.</param>
/// <param name="Attributes">Attribute to value; all of them.</param>
/// <param name="Set">What it comes with.</param>
/// <param name="Withdrawn">Whether it is no longer to be ordered.</param>
public sealed record PartChangeRequest(
    [Words(100)] string? Name = null,
    [Words(100)] string? Vendor = null,
    [Words(60)] string? VendorNumber = null,
    MoneyRequest? Price = null,
    [Id] string? Tax = null,
    MoneyRequest? CoreDeposit = null,
    [Between(0, 3650)] int? LeadDays = null,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Words(64)] string? Set = null,
    bool? Withdrawn = null);
