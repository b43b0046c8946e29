using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using RebuildApi.Engine.Money;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>
/// What stands on the invoice of a unit as an Invoice of UBL 2.1 with the content of EN 16931-1, bound as in CEN/TS 16931-3-2. Tax is worked out for each rate as
/// the standard asks (BR-CO-17); where the shop rounds on each line, the difference to what the customer agreed to is the rounding amount (BT-114).
/// </summary>
/// <param name="unit">The unit; its id stands for the number until the invoicing tool gives one.</param>
/// <param name="seller">Who sells; left out until the shop has said so.</param>
/// <param name="buyer">Who buys, in the shop's words.</param>
/// <param name="lines">The lines that stand: neither voids nor voided; at least one.</param>
public sealed class UblInvoice(string unit, Seller? seller, string buyer, ImmutableArray<InvoiceLine> lines)
{
    private static readonly XNamespace Aggregate = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
    private static readonly XNamespace Basic = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";
    private static readonly XNamespace Invoice = "urn:oasis:names:specification:ubl:schema:xsd:Invoice-2";

    private readonly MoneyRules _rules = new(lines[0].Currency, lines[0].Digits, Rounding.HalfUp, TaxRounding.PerRate);

    /// <summary>The document. The order of the elements is the schema's.</summary>
    public string Text => "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n" + new XElement(
        Invoice + "Invoice",
        new XAttribute("xmlns", Invoice.NamespaceName),
        new XAttribute(XNamespace.Xmlns + "cac", Aggregate.NamespaceName),
        new XAttribute(XNamespace.Xmlns + "cbc", Basic.NamespaceName),
        Of("CustomizationID", "urn:cen.eu:en16931:2017"),
        Of("ID", unit),
        Of("IssueDate", lines.Max(l => l.Time).UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
        // UNTDID 1001: 380 is a commercial invoice.
        Of("InvoiceTypeCode", "380"),
        Of("DocumentCurrencyCode", _rules.Currency),
        seller is null ? null : All("AccountingSupplierParty", UblParty.Of(seller)),
        All("AccountingCustomerParty", UblParty.Of(buyer)),
        TaxTotal(),
        MonetaryTotal(),
        lines.Select(Line));

    private IEnumerable<(Tax Tax, long Net, long Amount)> Rates => lines.GroupBy(l => (l.What.Tax.Category, l.What.Tax.Percent)).Select(g =>
        (g.First().What.Tax, g.Sum(l => l.Net), _rules.Whole(g.Sum(l => l.Net) * g.Key.Percent / 100m)));

    private XElement TaxTotal() => All("TaxTotal", [Money("TaxAmount", Rates.Sum(r => r.Amount)), .. Rates.Select(r => All(
        "TaxSubtotal", Money("TaxableAmount", r.Net), Money("TaxAmount", r.Amount), Category("TaxCategory", r.Tax, hasReason: true)))]);

    private XElement MonetaryTotal()
    {
        var (net, taxed, invoiced) = (lines.Sum(l => l.Net), lines.Sum(l => l.Net) + Rates.Sum(r => r.Amount), lines.Sum(l => l.Net + l.TaxAmount));
        return All(
            "LegalMonetaryTotal", Money("LineExtensionAmount", net), Money("TaxExclusiveAmount", net), Money("TaxInclusiveAmount", taxed),
            invoiced == taxed ? null : Money("PayableRoundingAmount", invoiced - taxed), Money("PayableAmount", invoiced));
    }

    private XElement Line(InvoiceLine line) => All(
        "InvoiceLine", Of("ID", line.Id), Count("InvoicedQuantity", line.What.Quantity, line.What.Measure), Money("LineExtensionAmount", line.Net),
        All("Item", Of("Name", line.What.Text), line.What.Part is { } part ? All("SellersItemIdentification", Of("ID", part)) : null, Category("ClassifiedTaxCategory", line.What.Tax, hasReason: false)),
        All("Price", Money("PriceAmount", line.What.Price ?? 0), Count("BaseQuantity", line.What.Per, line.What.Measure)));

    /// <summary>What is neither taxed nor zero-rated says why (BR-E-10, BR-AE-10, BR-O-10): in the shop's own word for it.</summary>
    private static XElement Category(string name, Tax tax, bool hasReason) => All(
        name, Of("ID", tax.Category), tax.Category == "O" ? null : Of("Percent", Number(tax.Percent)),
        hasReason && tax.Category is not ("S" or "Z" or "L" or "M") ? Of("TaxExemptionReason", tax.Id) : null, All("TaxScheme", Of("ID", "VAT")));

    // UN/ECE Recommendation 20: C62 is one, MIN a minute.
    private static XElement Count(string name, decimal quantity, string measure) =>
        new(Basic + name, new XAttribute("unitCode", measure == "minute" ? "MIN" : "C62"), Number(quantity));

    private XElement Money(string name, long minor) =>
        new(Basic + name, new XAttribute("currencyID", _rules.Currency), _rules.Words(minor).Split(' ')[0]);

    private static XElement All(string name, params object?[] content) => new(Aggregate + name, content);

    private static XElement Of(string name, string text) => new(Basic + name, text);

    private static string Number(decimal number) => number.ToString("0.############", CultureInfo.InvariantCulture);
}
