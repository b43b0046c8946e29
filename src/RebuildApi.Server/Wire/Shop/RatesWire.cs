using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>How the shop charges.</summary>
/// <param name="Currency">ISO 4217 code; XXX until the shop has said which.</param>
/// <param name="Digits">Decimals of its minor unit.</param>
/// <param name="Rounding">Where halves of a minor unit go.</param>
/// <param name="TaxRounding">Whether tax is rounded on each line, or once for each rate and shared out to the lines.</param>
/// <param name="Taxes">The rates of tax.</param>
/// <param name="LabourPerHour">Price of an hour at the bench, without tax.</param>
/// <param name="LabourTax">Which tax labour bears.</param>
/// <param name="PartsTax">Which tax parts bear unless they say otherwise.</param>
/// <param name="AgreedSharePercent">By how many percent of an approved sum the work may grow without asking the customer again.</param>
/// <param name="ComebackCost">What one comeback costs the shop.</param>
/// <param name="QuoteDays">For how many days a quote holds.</param>
/// <param name="ReservationHours">For how many hours a reservation holds.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record RatesWire(
    string Currency,
    int Digits,
    string Rounding,
    string TaxRounding,
    ImmutableArray<TaxWire> Taxes,
    MoneyWire LabourPerHour,
    string LabourTax,
    string PartsTax,
    decimal AgreedSharePercent,
    MoneyWire ComebackCost,
    int QuoteDays,
    int ReservationHours,
    long Version)
{
    /// <summary>Who sells, as invoices say it; nothing until the shop has said so.</summary>
    public SellerWire? Seller { get; init; }

    /// <summary>From the store.</summary>
    public static RatesWire From(Rates r) => new(
        r.Currency, r.Digits, r.Rounding, r.TaxRounding, [.. r.Taxes.Select(TaxWire.From)], MoneyWire.Of(r.LabourPerHour, r), r.LabourTax, r.PartsTax,
        r.AgreedShare * 100, MoneyWire.Of(r.ComebackCost, r), r.QuoteDays, r.ReservationHours, r.Version)
    {
        Seller = r.Seller is { } s ? new SellerWire(s.Name, s.Street, s.City, s.PostCode, s.Country, s.TaxId) : null,
    };
}

/// <summary>The shop as a seller.</summary>
/// <param name="Name">Its registered name.</param>
/// <param name="Street">Street and number.</param>
/// <param name="City">City.</param>
/// <param name="PostCode">Post code.</param>
/// <param name="Country">Country, ISO 3166-1 alpha-2.</param>
/// <param name="TaxId">VAT identifier.</param>
public sealed record SellerWire(string Name, string? Street, string? City, string? PostCode, string Country, string? TaxId);

/// <summary>A rate of tax.</summary>
/// <param name="Id">What the shop calls it.</param>
/// <param name="Category">Category code of UNTDID 5305, as EN 16931-1 uses it.</param>
/// <param name="Percent">In percent.</param>
public sealed record TaxWire(string Id, string Category, decimal Percent)
{
    /// <summary>From the store.</summary>
    public static TaxWire From(Tax tax) => new(tax.Id, tax.Category, tax.Percent);
}

/// <summary>Changes of how the shop charges; what is left out stays.</summary>
/// <param name="Currency">ISO 4217 code. It stays once anything has a price.</param>
/// <param name="Digits">Decimals of its minor unit.</param>
/// <param name="Rounding">Where halves of a minor unit go.</param>
/// <param name="TaxRounding">Whether tax is rounded on each line, or once for each rate and shared out to the lines.</param>
/// <param name="Taxes">The rates of tax; all of them.</param>
/// <param name="LabourPerHour">Price of an hour at the bench, without tax.</param>
/// <param name="LabourTax">Which tax labour bears.</param>
/// <param name="PartsTax">Which tax parts bear unless they say otherwise.</param>
/// <param name="AgreedSharePercent">By how many percent of an approved sum the work may grow without asking the customer again.</param>
/// <param name="ComebackCost">What one comeback costs the shop.</param>
/// <param name="QuoteDays">For how many days a quote holds.</param>
/// <param name="ReservationHours">For how many hours a reservation holds.</param>
/// <param name="Seller">Who sells, as invoices say it.</param>
public sealed record RatesChangeRequest(
    [Words(3)] string? Currency = null,
    [Between(0, 3)] int? Digits = null,
    [OneOf("half-up", "half-even")] string? Rounding = null,
    [OneOf("per-line", "per-rate")] string? TaxRounding = null,
    [Entries(1, 30)] ImmutableArray<TaxRequest>? Taxes = null,
    MoneyRequest? LabourPerHour = null,
    [Id] string? LabourTax = null,
    [Id] string? PartsTax = null,
    [Between(0, 100)] decimal? AgreedSharePercent = null,
    MoneyRequest? ComebackCost = null,
    [Between(1, 730)] int? QuoteDays = null,
    [Between(1, 8760)] int? ReservationHours = null,
    SellerRequest? Seller = null);

/// <summary>The shop as a seller.</summary>
/// <param name="Name">Its registered name.</param>
/// <param name="Country">Country, ISO 3166-1 alpha-2.</param>
/// <param name="Street">Street and number.</param>
/// <param name="City">City.</param>
/// <param name="PostCode">Post code.</param>
/// <param name="TaxId">VAT identifier.</param>
public sealed record SellerRequest(
    [Words(200)] string Name, [Words(2)] string Country, [Words(200)] string? Street = null, [Words(100)] string? City = null, [Words(20)] string? PostCode = null,
    [Words(30)] string? TaxId = null);

/// <summary>A rate of tax.</summary>
/// <param name="Id">What the shop calls it.</param>
/// <param name="Category">Category code of UNTDID 5305, as EN 16931-1 uses it: S standard, Z zero, E exempt, AE reverse charge, O outside the scope.</param>
/// <param name="Percent">In percent.</param>
public sealed record TaxRequest(
    [Id] string Id, [OneOf("S", "Z", "E", "AE", "K", "G", "O", "L", "M")] string Category, [Between(0, 100)] decimal Percent);
