using System.Globalization;
using System.Net;
using System.Xml.Linq;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>
/// The invoice as an open standard has it: the order of elements of Invoice in OASIS UBL 2.1 (UBL-Invoice-2.1.xsd and its common components), and the business
/// rules of EN 16931-1 by their names; both from memory of the published texts. Amounts are computed here.
/// </summary>
public sealed class UblInvoiceTests
{
    private static readonly XNamespace Cac = "urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2";
    private static readonly XNamespace Cbc = "urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2";

    /// <summary>The elements of each aggregate that may occur here, in the order of the schema.</summary>
    private static readonly Dictionary<string, string[]> s_order = new()
    {
        ["Invoice"] =
        [
            "CustomizationID", "ProfileID", "ID", "IssueDate", "DueDate", "InvoiceTypeCode", "Note", "TaxPointDate", "DocumentCurrencyCode", "BuyerReference", "OrderReference",
            "AccountingSupplierParty", "AccountingCustomerParty", "PayeeParty", "Delivery", "PaymentMeans", "PaymentTerms", "AllowanceCharge", "TaxTotal", "LegalMonetaryTotal", "InvoiceLine",
        ],
        ["Party"] = ["EndpointID", "PartyIdentification", "PartyName", "PostalAddress", "PartyTaxScheme", "PartyLegalEntity", "Contact"],
        ["PostalAddress"] = ["StreetName", "AdditionalStreetName", "CityName", "PostalZone", "CountrySubentity", "Country"],
        ["TaxTotal"] = ["TaxAmount", "TaxSubtotal"],
        ["TaxSubtotal"] = ["TaxableAmount", "TaxAmount", "TaxCategory"],
        ["TaxCategory"] = ["ID", "Percent", "TaxExemptionReasonCode", "TaxExemptionReason", "TaxScheme"],
        ["LegalMonetaryTotal"] =
        [
            "LineExtensionAmount", "TaxExclusiveAmount", "TaxInclusiveAmount", "AllowanceTotalAmount", "ChargeTotalAmount", "PrepaidAmount", "PayableRoundingAmount", "PayableAmount",
        ],
        ["InvoiceLine"] = ["ID", "Note", "InvoicedQuantity", "LineExtensionAmount", "OrderLineReference", "AllowanceCharge", "Item", "Price"],
        ["Item"] = ["Description", "Name", "BuyersItemIdentification", "SellersItemIdentification", "ClassifiedTaxCategory"],
        ["Price"] = ["PriceAmount", "BaseQuantity", "AllowanceCharge"],
    };

    // 3 keys at 3.33 = 9.99 and 1 at 0.35, 7.25 %; 35 min at 60.00 an hour = 35.00 at 20 %. On the line: 0.72 + 0.03 (0.025375) + 7.00; for each rate 10.34 × 7.25 % = 0.75 (0.74965).
    // A third line of 0.35 makes it 0.72 + 0.03 + 0.03 = 0.78 on the line and 10.69 × 7.25 % = 0.775 = 0.78 for the rate; the washer at 1.79: 0.13 (0.129775), rate 12.48: 0.90 (0.9048), lines 0.91.
    private const string Quote = """
        { "person": "Ada", "extras": [
          { "id": "keys", "text": "Shift keys", "price": { "minor": 333, "currency": "EUR" }, "quantity": 3, "tax": "reduced" },
          { "id": "clip", "text": "Clip", "price": { "minor": 35, "currency": "EUR" }, "tax": "reduced" },
          { "id": "clip-2", "text": "Clip", "price": { "minor": 35, "currency": "EUR" }, "tax": "reduced" },
          { "id": "washer", "text": "Washer", "price": { "minor": 179, "currency": "EUR" }, "tax": "reduced" },
          { "id": "work", "text": "Bench work", "price": { "minor": 6000, "currency": "EUR" }, "sort": "labour", "quantity": 35, "tax": "standard" },
          { "id": "stamp", "text": "Stamp", "price": { "minor": 250, "currency": "EUR" }, "tax": "outside" }] }
        """;

    [Theory]
    [InlineData("per-line", "0.01")]
    [InlineData("per-rate", null)]
    public async Task The_invoice_keeps_the_order_of_the_schema_and_the_rules_of_the_standard(string rounding, string? over)
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server, rounding);
        var invoiced = await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");

        var invoice = await Invoice(http);

        foreach (var aggregate in invoice.DescendantsAndSelf().Where(e => s_order.ContainsKey(e.Name.LocalName)))
        {
            var places = aggregate.Elements().Select(e => Array.IndexOf(s_order[aggregate.Name.LocalName], e.Name.LocalName)).ToArray();
            Assert.DoesNotContain(-1, places);
            Assert.Equal(places.Order(), places);
        }

        Assert.Equal(("urn:oasis:names:specification:ubl:schema:xsd:Invoice-2", "Invoice"), (invoice.Name.NamespaceName, invoice.Name.LocalName));
        Content(invoice);
        Sums(invoice);
        var payable = Amount(invoice.Element(Cac + "LegalMonetaryTotal")!, "PayableAmount");
        Assert.Equal((decimal)(long)invoiced["reconciliation"]!["invoiced"]!["minor"]! / 100, payable);
        Assert.Equal(over, invoice.Descendants(Cbc + "PayableRoundingAmount").SingleOrDefault()?.Value);
    }

    [Fact]
    public async Task A_line_that_was_taken_off_is_not_on_it_and_nothing_invoiced_is_no_invoice()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server, "per-line");
        using var none = await http.GetAsync("/v1/units/u1/invoice-lines.xml");
        Assert.Equal("unknown-quote", (string)(await none.Problem())["code"]!);
        var first = await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");
        await http.Make("/v1/units/u1/invoice-lines", $$"""{ "person": "Ada", "voids": ["{{(string)first["items"]![0]!["id"]!}}"] }""");

        var invoice = await Invoice(http);

        Assert.DoesNotContain("Shift keys", invoice.Descendants(Cbc + "Name").Select(n => n.Value));
        Sums(invoice);
    }

    /// <summary>RFC 9110, 12.5.1: the most exact range counts, quality 0 means never, and what nobody asks for is JSON.</summary>
    [Theory]
    [InlineData(null, "application/json")]
    [InlineData("*/*", "application/json")]
    [InlineData("text/html, */*;q=0.1", "application/json")]
    [InlineData("application/*", "application/json")]
    [InlineData("application/json, application/xml", "application/json")]
    [InlineData("application/xml", "application/xml")]
    [InlineData("APPLICATION/XML", "application/xml")]
    [InlineData("application/json;q=0.5, application/xml", "application/xml")]
    [InlineData("application/json;q=0, */*", "application/xml")]
    [InlineData("application/xml;q=0.2, */*;q=0.1", "application/xml")]
    public async Task Accept_chooses_the_form_where_the_address_names_none(string? accept, string given)
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server, "per-line");
        await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");

        using var answer = await Asked(http, "/v1/units/u1/invoice-lines", accept);

        Assert.Equal((given, "Accept"), (answer.Content.Headers.ContentType!.MediaType, string.Join(",", answer.Headers.Vary)));
        if (given == "application/xml")
            Assert.Equal(await http.GetStringAsync("/v1/units/u1/invoice-lines.xml"), await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task What_is_not_offered_is_named_with_what_is_and_a_suffix_needs_no_Accept()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server, "per-line");

        using var none = await Asked(http, "/v1/units/u1/invoice-lines", "image/png, application/xml;q=0");
        using var table = await Asked(http, "/v1/units/u1/invoice-lines.csv", "image/png");

        var problem = await none.Problem();
        Assert.Equal((HttpStatusCode.NotAcceptable, "not-acceptable", "Accept"), (none.StatusCode, (string)problem["code"]!, string.Join(",", none.Headers.Vary)));
        var error = Assert.Single(problem["errors"]!.AsArray())!;
        Assert.Equal("header/Accept", (string)error["pointer"]!);
        Assert.Equal(["application/json", "application/xml"], error["allowed"]!.AsArray().Select(a => (string)a!));
        Assert.Equal((HttpStatusCode.OK, "text/csv"), (table.StatusCode, table.Content.Headers.ContentType!.MediaType));
    }

    private static async Task<HttpResponseMessage> Asked(HttpClient http, string path, string? accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (accept is not null)
            request.Headers.TryAddWithoutValidation("Accept", accept);
        return await http.SendAsync(request);
    }

    /// <summary>BR-01 to BR-07 and BR-09, BR-16, BR-21 to BR-27: what an invoice and each of its lines must have.</summary>
    private static void Content(XElement invoice)
    {
        foreach (var name in new[] { "CustomizationID", "ID", "IssueDate", "InvoiceTypeCode", "DocumentCurrencyCode" })
            Assert.NotEmpty(invoice.Element(Cbc + name)!.Value);
        Assert.Equal("Saltmarsh Lane Gearboxes (invented)", invoice.Element(Cac + "AccountingSupplierParty")!.Descendants(Cbc + "RegistrationName").Single().Value);
        Assert.Equal("IE", invoice.Element(Cac + "AccountingSupplierParty")!.Descendants(Cbc + "IdentificationCode").Single().Value);
        Assert.NotEmpty(invoice.Element(Cac + "AccountingCustomerParty")!.Descendants(Cbc + "RegistrationName").Single().Value);
        Assert.Equal(6, invoice.Elements(Cac + "InvoiceLine").Count());
        foreach (var line in invoice.Elements(Cac + "InvoiceLine"))
        {
            Assert.NotEmpty(line.Element(Cbc + "ID")!.Value);
            Assert.NotEmpty((string)line.Element(Cbc + "InvoicedQuantity")!.Attribute("unitCode")!);
            Assert.NotEmpty(line.Element(Cac + "Item")!.Element(Cbc + "Name")!.Value);
            var price = line.Element(Cac + "Price")!;
            Assert.True(Amount(price, "PriceAmount") >= 0);
            Assert.Equal(Amount(line, "LineExtensionAmount"), Rounded(Amount(line, "InvoicedQuantity") * Amount(price, "PriceAmount") / Amount(price, "BaseQuantity")));
        }
    }

    private static void Sums(XElement invoice)
    {
        var (totals, tax) = (invoice.Element(Cac + "LegalMonetaryTotal")!, invoice.Element(Cac + "TaxTotal")!);
        var (net, without, with) = (Amount(totals, "LineExtensionAmount"), Amount(totals, "TaxExclusiveAmount"), Amount(totals, "TaxInclusiveAmount"));
        var lines = invoice.Elements(Cac + "InvoiceLine").ToArray();
        Rule("BR-CO-10: Σ line net amounts", lines.Sum(l => Amount(l, "LineExtensionAmount")), net);
        Rule("BR-CO-11: Σ allowances", Sum(invoice, "AllowanceTotalAmount"), invoice.Elements(Cac + "AllowanceCharge").Count());
        Rule("BR-CO-12: Σ charges", Sum(invoice, "ChargeTotalAmount"), invoice.Elements(Cac + "AllowanceCharge").Count());
        Rule("BR-CO-13: without tax = lines − allowances + charges", net - Sum(totals, "AllowanceTotalAmount") + Sum(totals, "ChargeTotalAmount"), without);
        var rates = tax.Elements(Cac + "TaxSubtotal").ToArray();
        Rule("BR-CO-14: Σ tax of the categories", rates.Sum(r => Amount(r, "TaxAmount")), Amount(tax, "TaxAmount"));
        Rule("BR-CO-15: with tax = without + tax", without + Amount(tax, "TaxAmount"), with);
        Rule("BR-CO-16: payable = with tax − paid + rounding", with - Sum(totals, "PrepaidAmount") + Sum(totals, "PayableRoundingAmount"), Amount(totals, "PayableAmount"));
        foreach (var rate in rates)
        {
            Rule("BR-CO-17: tax = taxable × rate ÷ 100", Rounded(Amount(rate, "TaxableAmount") * Sum(rate, "Percent") / 100), Amount(rate, "TaxAmount"));
            var category = rate.Element(Cac + "TaxCategory")!.Element(Cbc + "ID")!.Value;
            // BR-S-08 and its like: the taxable amount of a category and rate is the sum of its lines.
            Rule("BR-S-08", lines.Where(l => Of(l) == (category, Sum(rate, "Percent"))).Sum(l => Amount(l, "LineExtensionAmount")), Amount(rate, "TaxableAmount"));
            Assert.Equal(category == "O", rate.Descendants(Cbc + "TaxExemptionReason").Any());
        }
    }

    private static (string, decimal) Of(XElement line) => (line.Descendants(Cac + "ClassifiedTaxCategory").Single().Element(Cbc + "ID")!.Value, Sum(line, "Percent"));

    private static void Rule(string name, decimal expected, decimal actual) => Assert.True(expected == actual, $"{name}: {expected} expected, {actual} written");

    private static decimal Rounded(decimal amount) => Math.Round(amount, 2, MidpointRounding.AwayFromZero);

    private static decimal Sum(XElement of, string name) => of.Descendants(Cbc + name).Sum(e => decimal.Parse(e.Value, CultureInfo.InvariantCulture));

    private static decimal Amount(XElement of, string name) => decimal.Parse(of.Element(Cbc + name)!.Value, CultureInfo.InvariantCulture);

    private static async Task<XElement> Invoice(HttpClient http) => XDocument.Parse(await http.GetStringAsync("/v1/units/u1/invoice-lines.xml")).Root!;

    private static async Task<HttpClient> Shop(ShopServer server, string rounding)
    {
        var http = await server.WithRates();
        using var told = await http.Send(HttpMethod.Patch, "/v1/rates", $$"""
            { "taxRounding": "{{rounding}}", "taxes": [{ "id": "standard", "category": "S", "percent": 20 }, { "id": "reduced", "category": "S", "percent": 7.25 }, { "id": "outside", "category": "O", "percent": 0 }],
              "seller": { "name": "Saltmarsh Lane Gearboxes (invented)", "street": "1 Saltmarsh Lane", "city": "Ferryport", "postCode": "F1", "country": "IE", "taxId": "IE0000000A" } }
            """, ("If-Match", "*"));
        Assert.True(told.IsSuccessStatusCode, await told.Content.ReadAsStringAsync());
        await http.Make("/v1/units/u1/quote", Quote);
        await http.Make("/v1/units/u1/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Ada" }""");
        return http;
    }
}
