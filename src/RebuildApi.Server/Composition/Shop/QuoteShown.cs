using RebuildApi.Engine.Money;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Shop;

/// <summary>Shows a quote with its amounts.</summary>
public static class QuoteShown
{
    /// <summary>The newest quote, and where the agreement stands.</summary>
    public static QuoteWire Of(Standing standing)
    {
        var (quote, rates) = (standing.Newest, standing.Newest.Rates);
        var sums = QuoteSums.Of(quote.Counted(), rates.Rules());
        // Tax may be shared out over the lines of one need, so each need is priced by itself, as its sums are.
        var priced = quote.Lines.Where(l => l.Price is not null).GroupBy(l => l.Need, StringComparer.Ordinal)
            .SelectMany(g => Pricing.Price(g.Select(l => l.Line()), rates.Rules())).ToDictionary(p => p.Line.Id, StringComparer.Ordinal);
        return new QuoteWire(
            quote.Id, quote.Unit, quote.Number, quote.Plan, quote.Person, quote.Time, quote.Expires,
            [.. quote.Lines.Select(l => QuoteLineWire.From(l, priced.GetValueOrDefault(l.Id), rates))],
            TotalsWire.From(sums.Required, rates), TotalsWire.From(sums.Recommended, rates), TotalsWire.From(sums.Optional, rates),
            new PriceRangeWire(MoneyWire.Of(sums.Range.Low, rates), MoneyWire.Of(sums.Range.Likely, rates), MoneyWire.Of(sums.Range.High, rates)),
            quote.OpenPrices(), Agreed(standing, rates), Cautions.Standing);
    }

    private static ApprovalStateWire Agreed(Standing standing, Rates rates) => standing.Approval is { } a
        ? new(standing.State, MoneyWire.Of(a.Sum, rates), MoneyWire.Of(standing.Agreement!.Ceiling, rates), a.Number, a.By, a.Time)
        : new(standing.State, null, null, null, null, null);
}
