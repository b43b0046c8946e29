using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Server.Wire.Shop;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>A quote for the customer: what is required, recommended and optional, with tax, until when it holds, and how much it may grow.</summary>
public sealed class QuotePaper(Unit unit, QuoteWire quote, Rates rates, PageWords w)
{
    private static readonly string[] Needs = ["required", "recommended", "optional"];
    private readonly Sums _sums = new(rates);

    /// <summary>The paper.</summary>
    public Paper Write() => new(w["quote.title", ("tag", unit.Tag), ("n", Number(quote.Number))],
    [
        new Prose(w["quote.of", ("tag", unit.Tag), ("family", unit.Family.Id), ("when", PaperHead.Minute(quote.Time)), ("until", PaperHead.Minute(quote.Expires)), ("person", quote.Person)]),
        .. unit.Customer is { } customer ? [new Prose(w["record.customer", ("customer", customer)])] : ImmutableArray<Block>.Empty,
        .. Needs.SelectMany(Section),
        new Heading(w["quote.range"]),
        new Prose(w["quote.range-of", ("low", _sums.Of(quote.Range.Low)), ("likely", _sums.Of(quote.Range.Likely)), ("high", _sums.Of(quote.Range.High))]),
        .. quote.OpenPrices.IsEmpty ? ImmutableArray<Block>.Empty : [new Prose(w["quote.open", ("lines", string.Join(", ", quote.OpenPrices))])],
        new Prose(Agreement()),
        new Bullets(quote.Cautions),
        new Signatures([w["quote.customer"], w["quote.shop"]]),
    ]);

    private IEnumerable<Block> Section(string need)
    {
        var lines = quote.Lines.Where(l => l.Need == need).ToImmutableArray();
        if (lines.IsEmpty)
            yield break;
        yield return new Heading(w["quote." + need]);
        yield return new Grid(
            [new(w["quote.what"], 4.4), new(w["quote.quantity"], 1.3, true), new(w["quote.price"], 1.6, true), new(w["quote.net"], 1.6, true), new(w["quote.tax"], 1.8, true)],
            [.. lines.Select(Line)], w["record.none"]);
        var sum = need switch { "required" => quote.Required, "recommended" => quote.Recommended, _ => quote.Optional };
        yield return new Prose(w["quote.sum", ("net", _sums.Of(sum.Net)), ("tax", _sums.Of(sum.Tax)), ("gross", _sums.Of(sum.Gross))]);
    }

    private Row Line(QuoteLineWire l) => Row.Of(
        l.Text + (l.Chance < 1 ? " " + w["quote.perhaps", ("chance", Number(Math.Round(100 * l.Chance)))] : ""),
        $"{Number(l.Quantity)} {l.Measure}",
        l.Price is null ? w["quote.ask"] : _sums.Of(l.Price) + (l.Per == 1 ? "" : $" / {Number(l.Per)}"),
        _sums.Of(l.Net),
        l.TaxAmount is null ? "" : $"{_sums.Of(l.TaxAmount)} ({Number(l.Tax.Percent)} %)");

    private string Agreement() => quote.Approval is { Sum: { } sum, By: { } by, Number: { } number } a
        ? w["quote.agreed", ("by", by), ("sum", _sums.Of(sum)), ("n", Number(number)), ("ceiling", _sums.Of(a.Ceiling))]
        : w["quote.not-agreed", ("share", Number(100 * rates.AgreedShare))];

    private static string Number(decimal number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
