using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>How the shop charges. There is one for each shop; amounts are whole minor units of its currency.</summary>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Digits">Decimals of its minor unit.</param>
/// <param name="Rounding"><c>half-up</c> or <c>half-even</c>.</param>
/// <param name="TaxRounding"><c>per-line</c> or <c>per-rate</c>.</param>
/// <param name="Taxes">The rates of tax.</param>
/// <param name="LabourPerHour">Price of an hour at the bench, without tax.</param>
/// <param name="LabourTax">Which tax labour bears.</param>
/// <param name="PartsTax">Which tax parts bear unless they say otherwise.</param>
/// <param name="AgreedShare">By which share of an approved sum the work may grow without asking again.</param>
/// <param name="ComebackCost">What one comeback costs the shop.</param>
/// <param name="QuoteDays">For how many days a quote holds.</param>
/// <param name="ReservationHours">For how many hours a reservation holds.</param>
/// <param name="Version">Row version.</param>
public sealed record Rates(
    string Currency,
    int Digits,
    string Rounding,
    string TaxRounding,
    ImmutableArray<Tax> Taxes,
    long LabourPerHour,
    string LabourTax,
    string PartsTax,
    decimal AgreedShare,
    long ComebackCost,
    int QuoteDays,
    int ReservationHours,
    long Version) : IShopRecord<Rates>
{
    /// <summary>Who sells, as invoices say it; none until the shop has said so.</summary>
    public Seller? Seller { get; init; }

    /// <summary>The one id.</summary>
    public const string TheId = "rates";

    /// <inheritdoc/>
    public static ShopTable<Rates> Table { get; } = new("rates", isEdited: true, StoreJson.Default.Rates, isOfUnit: false);

    string IShopRecord<Rates>.Id => TheId;

    string? IShopRecord<Rates>.OfUnit => null;

    string? IShopRecord<Rates>.About => null;

    /// <inheritdoc/>
    public Rates At(long version) => this with { Version = version };
}

/// <summary>The shop as a seller.</summary>
/// <param name="Name">Its registered name.</param>
/// <param name="Street">Street and number.</param>
/// <param name="City">City.</param>
/// <param name="PostCode">Post code.</param>
/// <param name="Country">Country, ISO 3166-1 alpha-2.</param>
/// <param name="TaxId">VAT identifier, if it has one.</param>
public sealed record Seller(string Name, string? Street, string? City, string? PostCode, string Country, string? TaxId);

/// <summary>A rate of tax.</summary>
/// <param name="Id">What the shop calls it.</param>
/// <param name="Category">Category code of UNTDID 5305: S, Z, E and so on.</param>
/// <param name="Percent">In percent.</param>
public sealed record Tax(string Id, string Category, decimal Percent);
