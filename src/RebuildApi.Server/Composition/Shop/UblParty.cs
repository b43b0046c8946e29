using System.Xml.Linq;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Seller and buyer as UBL 2.1 writes a party. What the shop does not know is left out.</summary>
internal static class UblParty
{
    private static readonly XNamespace Aggregate = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
    private static readonly XNamespace Basic = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";

    /// <summary>The seller (BG-4), with its postal address (BG-5) and VAT identifier (BT-31).</summary>
    public static XElement Of(Seller seller) => All(
        "Party",
        All("PostalAddress", Maybe("StreetName", seller.Street), Maybe("CityName", seller.City), Maybe("PostalZone", seller.PostCode), All("Country", Maybe("IdentificationCode", seller.Country))),
        seller.TaxId is null ? null : All("PartyTaxScheme", Maybe("CompanyID", seller.TaxId), All("TaxScheme", Maybe("ID", "VAT"))),
        Named(seller.Name));

    /// <summary>The buyer (BG-7), of whom the shop knows a name.</summary>
    public static XElement Of(string buyer) => All("Party", Named(buyer));

    private static XElement Named(string name) => All("PartyLegalEntity", Maybe("RegistrationName", name));

    private static XElement All(string name, params object?[] content) => new(Aggregate + name, content);

    private static XElement? Maybe(string name, string? text) => text is null ? null : new XElement(Basic + name, text);
}
