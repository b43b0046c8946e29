using System.Collections.Immutable;
using RebuildApi.Engine.Money;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Quotes as the engine counts them.</summary>
public static class Quoting
{
    /// <summary>A line of the engine. Lines without a price are left out before.</summary>
    public static PriceLine Line(this Needed needed) => new(
        needed.Id, needed.Quantity, needed.Price ?? 0, needed.Per, new TaxRate(needed.Tax.Id, needed.Tax.Category, needed.Tax.Percent));

    /// <summary>The lines whose price is known, as the engine counts them.</summary>
    public static ImmutableArray<QuoteLine> Counted(this Quote quote) =>
        [.. quote.Lines.Where(l => l.Price is not null).Select(l => new QuoteLine(l.Line(), NeedOf(l.Need), l.Chance))];

    /// <summary>What the required lines and those named come to, line by line.</summary>
    public static ImmutableArray<PricedLine> Agreed(this Quote quote, IReadOnlySet<string> accepted) =>
        Pricing.Price(quote.Lines.Where(l => l.Need == "required" || accepted.Contains(l.Id)).Select(l => l.Line()), quote.Rates.Rules());

    /// <summary>The ids of lines whose price is still to be asked for.</summary>
    public static ImmutableArray<string> OpenPrices(this Quote quote) => [.. quote.Lines.Where(l => l.Price is null).Select(l => l.Id)];

    /// <summary>A further line, priced as the shop charges.</summary>
    public static Needed Extra(ExtraLineRequest sent, Rates rates, string pointer, Complaints complaints)
    {
        var isLabour = sent.Sort == "labour";
        rates.CheckTax(sent.Tax, pointer + "/tax", complaints);
        var tax = rates.Taxes.FirstOrDefault(t => t.Id == sent.Tax) ?? rates.TaxOf(isLabour ? rates.LabourTax : rates.PartsTax);
        return new Needed(
            sent.Id, sent.Sort, sent.Text, sent.Need, sent.Chance, sent.Quantity, isLabour ? "minute" : "piece", rates.Amount(sent.Price, pointer + "/price", complaints),
            isLabour ? 60 : 1, tax, [], null, null, null);
    }

    private static Need NeedOf(string word) => word switch { "required" => Need.Required, "recommended" => Need.Recommended, _ => Need.Optional };
}

/// <summary>Where the agreement with a customer stands: the quote that governs the work, and what was agreed to.</summary>
/// <param name="Newest">The newest quote.</param>
/// <param name="Approval">The newest approval, if there is one.</param>
/// <param name="Approved">The quote that it agreed to.</param>
public sealed record Standing(Quote Newest, Approval? Approval, Quote? Approved)
{
    /// <summary>What was agreed to with its share.</summary>
    public Agreement? Agreement => Approval is { } a ? new Agreement(a.Sum, a.Share) : null;

    /// <summary><c>none</c>, <c>agreed</c>, <c>covered</c> by what was agreed before and its share, or <c>ask-again</c>.</summary>
    public string State => Approval is null ? "none"
        : Approval.Quote == Newest.Id ? "agreed"
        : Newest.OpenPrices().IsEmpty && !Agreement!.NeedsApproval(Totals.Of(Newest.Agreed(Accepted)).Gross) ? "covered"
        : "ask-again";

    /// <summary>The quote that the work goes by: the newest one when it is agreed to or covered, else the one that was agreed to.</summary>
    public Quote? Governing => State is "agreed" or "covered" ? Newest : Approved;

    /// <summary>The lines agreed to.</summary>
    public ImmutableHashSet<string> Accepted => Approval is { } a ? [.. a.Lines.Select(l => l.Line)] : [];

    /// <summary>The lines that may be invoiced, with their amounts.</summary>
    public ImmutableArray<PricedLine> Lines => Governing is { } quote ? quote.Agreed(Accepted) : [];

    /// <summary>From what is stored of a unit; null when nothing was quoted.</summary>
    public static Standing? Of(Quote? newest, Approval? approval, Func<string, Quote?> quote) =>
        newest is null ? null : new Standing(newest, approval, approval is null ? null : quote(approval.Quote));

    /// <summary>Inside a change.</summary>
    public static Standing? Of(IWriteSession session, string unit) =>
        Of(session.All<Quote>(unit).MaxBy(q => q.Number), session.All<Approval>(unit).LastOrDefault(), session.Find<Quote>);

    /// <summary>As it is stored.</summary>
    public static async ValueTask<Standing?> Of(IStore store, string unit, CancellationToken cancellation)
    {
        var newest = await store.Newest<Quote>(new ShopFilter(unit), cancellation);
        var approval = await store.Newest<Approval>(new ShopFilter(unit), cancellation);
        var approved = approval is null ? null : await store.Find<Quote>(approval.Quote, cancellation);
        return Of(newest, approval, _ => approved);
    }

    /// <summary>What was agreed to, held against what was invoiced; null before anyone agreed.</summary>
    public Reconciliation? Reconcile(IEnumerable<InvoiceLine> invoiced) => Approval is null ? null : Reconciliation.Of(
        [.. Lines.Select(l => new Charge(l.Line.Id, l.Net, l.Tax))],
        [.. invoiced.Select(i => new Charge(i.Of ?? i.What.Id, i.Net, i.TaxAmount))],
        Approval.Share, Newest.Rates.Rules(), Agreement);
}
