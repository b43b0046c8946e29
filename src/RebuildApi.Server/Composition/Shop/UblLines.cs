using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using RebuildApi.Engine.Money;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>
/// Writes invoice lines as UBL 2.1 does, with what EN 16931-1 asks of a line (BG-25 to BG-31), bound as in CEN/TS 16931-3-2. A line that is taken off has
/// a negative quantity, since a price may not be negative (BR-27). Tax amounts are not part of a line there: the tool works them out for each rate.
/// </summary>
public static class UblLines
{
    private static readonly XNamespace Aggregate = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
    private static readonly XNamespace Basic = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";

    /// <summary>The document: a plain list of the standard's line elements.</summary>
    public static string Of(ImmutableArray<InvoiceLine> lines) =>
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n" + new XElement(
            "InvoiceLines",
            new XAttribute(XNamespace.Xmlns + "cac", Aggregate.NamespaceName),
            new XAttribute(XNamespace.Xmlns + "cbc", Basic.NamespaceName),
            lines.Select(Line));

    // The order of the elements is the schema's.
    private static XElement Line(InvoiceLine line) => new(
        Aggregate + "InvoiceLine",
        new XElement(Basic + "ID", line.Id),
        line.Voids is { } voids ? new XElement(Basic + "Note", "Takes off line " + voids) : null,
        new XElement(Basic + "InvoicedQuantity", Unit(line.What.Measure), Number(line.What.Quantity)),
        new XElement(Basic + "LineExtensionAmount", Currency(line), Amount(line.Net, line)),
        Item(line),
        new XElement(
            Aggregate + "Price",
            new XElement(Basic + "PriceAmount", Currency(line), Amount(line.What.Price ?? 0, line)),
            new XElement(Basic + "BaseQuantity", Unit(line.What.Measure), Number(line.What.Per))));

    private static XElement Item(InvoiceLine line) => new(
        Aggregate + "Item",
        new XElement(Basic + "Name", line.What.Text),
        line.What.Part is { } part ? new XElement(Aggregate + "SellersItemIdentification", new XElement(Basic + "ID", part)) : null,
        new XElement(
            Aggregate + "ClassifiedTaxCategory",
            new XElement(Basic + "ID", line.What.Tax.Category),
            line.What.Tax.Category == "O" ? null : new XElement(Basic + "Percent", Number(line.What.Tax.Percent)),
            new XElement(Aggregate + "TaxScheme", new XElement(Basic + "ID", "VAT"))));

    // UN/ECE Recommendation 20: C62 is one, MIN a minute.
    private static XAttribute Unit(string measure) => new("unitCode", measure == "minute" ? "MIN" : "C62");

    private static XAttribute Currency(InvoiceLine line) => new("currencyID", line.Currency);

    private static string Amount(long minor, InvoiceLine line) =>
        new MoneyRules("", line.Digits, Rounding.HalfUp, TaxRounding.PerLine).Words(minor).TrimEnd();

    private static string Number(decimal number) => number.ToString("0.############", CultureInfo.InvariantCulture);
}
