using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Server.Access;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Shop;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Lines for an invoicing tool.</summary>
public static class InvoiceEndpoints
{
    private const int LargestPull = 500;

    /// <summary>The routes.</summary>
    public static void MapInvoiceLines(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("plans");
        group.List<InvoiceLinesWire>("/units/{unit}/invoice-lines", OfUnit, "listUnitInvoiceLines", "List the invoice lines of a unit",
                "What was written for the invoicing tool, held line by line against what the customer agreed to. Without a suffix, Accept: application/xml gives the invoice as UBL, as .xml does.")
            .Fails(Problems.UnknownUnit).AlsoAs(ListForm.Xml, Problems.UnknownQuote);
        group.Read("/units/{unit}/invoice-lines.xml", Xml, "getUnitInvoiceUbl", "Get the invoice of a unit as UBL",
                "The lines that stand as an Invoice of UBL 2.1 with the content of EN 16931-1: tax for each rate, totals, and what rounding on the line leaves over. Number and buyer's address are the invoicing tool's own; the seller is who the rates say.")
            .Fails(Problems.UnknownUnit, Problems.UnknownQuote).Produces<string>(200, "application/xml");
        group.Make("/units/{unit}/invoice-lines", Write, "writeInvoiceLines", "Write invoice lines",
                "Writes the lines that were agreed to and are not written yet, with the amounts that were agreed to; or those named. A wrong line is voided by one that takes it off. Further lines may come within the share by which the work may grow.")
            .Needs(Scope.Office).Fails(Problems.UnknownUnit, Problems.UnknownQuote, Problems.QuoteOvertaken, Problems.ApprovalNeeded, Problems.InvalidContent)
            .Example("""{ "person": "Ada" }""");
        group.List<ListOf<InvoiceLineWire>>("/feeds/invoice-lines", Feed, "pullInvoiceLines", "Pull the invoice lines of the shop",
                "Every line in the order in which it was written, never edited. Keep the cursor of the last line read and send it next time: each line comes once, and the same line always has the same id.");
    }

    private static async Task<IResult> OfUnit(string unit, HttpContext http, Bench bench, IStore store, CancellationToken cancellation) =>
        Offer.Of(http) == ListForm.Xml ? await Xml(unit, bench, store, cancellation) : await Lines(unit, bench, store, cancellation);

    private static async Task<Listing<InvoiceLineWire, InvoiceLinesWire>> Lines(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        await bench.File(unit, cancellation);
        var lines = await store.All<InvoiceLine>(new ShopFilter(unit), cancellation);
        var standing = await Standing.Of(store, unit, cancellation);
        var held = standing?.Reconcile(lines) is { } found ? ReconciliationWire.From(found, standing.Newest.Rates) : null;
        return new(PagesOf.Whole([.. lines.Select(InvoiceLineWire.From)], l => l.Id), (items, next, asOf) => new(items, next, asOf, held));
    }

    private static async Task<IResult> Xml(string unit, Bench bench, IStore store, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var lines = InvoiceDesk.Counting(await store.All<InvoiceLine>(new ShopFilter(unit), cancellation)).ToImmutableArray();
        if (lines.IsEmpty)
            throw new ProblemException(Problems.UnknownQuote, "Nothing stands on the invoice of this unit yet.");
        var buyer = file.Unit.Customer ?? (await store.Newest<Approval>(new ShopFilter(unit), cancellation))!.By;
        return TypedResults.Text(new UblInvoice(unit, (await store.Rates(cancellation)).Seller, buyer, lines).Text, "application/xml; charset=utf-8");
    }

    private static async Task<CreatedAnswer<InvoicedWire>> Write(string unit, Body<InvoiceRequest> body, Bench bench, IStore store, CancellationToken cancellation)
    {
        var answer = await store.Write(body.Request, session =>
        {
            _ = session.Unit(unit) ?? throw Bench.Unknown();
            var (lines, held, rates) = new InvoiceDesk(session, bench.Ids, bench.Time.GetUtcNow()).Write(unit, body.Value);
            return Answer.Created($"/v1/units/{unit}/invoice-lines", new InvoicedWire([.. lines.Select(InvoiceLineWire.From)], ReconciliationWire.From(held, rates)));
        }, cancellation);
        return new(answer, body.Request.DryRun);
    }

    private static Listing<InvoiceLineWire, ListOf<InvoiceLineWire>> Feed(IStore store)
    {
        PageReader<InvoiceLineWire> pages = async (after, limit, cancellation) =>
        {
            var most = Math.Min(limit, LargestPull);
            var found = await store.Newer<InvoiceLine>(Sequence(after), most + 1, cancellation);
            var page = found.Length > most ? found[..most] : found;
            var next = found.Length > most ? page[^1].Sequence.ToString(CultureInfo.InvariantCulture) : null;
            return new Page<InvoiceLineWire>([.. page.Select(InvoiceLineWire.From)], next);
        };
        return new(pages, (items, next, asOf) => new(items, next, asOf));
    }

    private static long Sequence(string? after) =>
        after is null ? 0 : long.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence) ? sequence : throw Cursor.Bad(after);
}
