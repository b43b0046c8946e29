using System.Collections.Immutable;

namespace RebuildApi.Engine.Money;

/// <summary>Works out the amounts of lines. Whatever the rates and the rounding, lines add up to their totals.</summary>
public static class Pricing
{
    /// <summary>Prices lines that belong to one document.</summary>
    /// <exception cref="OverflowException">An amount is larger than can be kept.</exception>
    public static ImmutableArray<PricedLine> Price(IEnumerable<PriceLine> lines, MoneyRules rules)
    {
        ImmutableArray<PricedLine> net = [.. lines.Select(l => new PricedLine(l, rules.Whole(l.Quantity * l.Price / l.Per), 0))];
        return rules.TaxRounding == TaxRounding.PerLine ? [.. net.Select(l => l with { Tax = rules.Whole(Exact(l)) })] : Shared(net, rules);
    }

    private static decimal Exact(PricedLine line) => line.Net * line.Line.Tax.Percent / 100m;

    private static ImmutableArray<PricedLine> Shared(ImmutableArray<PricedLine> lines, MoneyRules rules)
    {
        var taxed = lines.ToArray();
        foreach (var rate in Enumerable.Range(0, lines.Length).GroupBy(i => lines[i].Line.Tax))
            ShareOut(taxed, [.. rate], rules);
        return [.. taxed];
    }

    // Each line gets its exact tax rounded down; what is then missing to the rounded sum goes, one minor unit each, to the lines that lost
    // most. Σ floor ≤ rounded Σ ≤ Σ floor + number of lines with a fraction, so one unit each is always enough, and no line without a fraction gets one.
    private static void ShareOut(PricedLine[] lines, int[] ofRate, MoneyRules rules)
    {
        var exact = ofRate.ToDictionary(i => i, i => Exact(lines[i]));
        foreach (var i in ofRate)
            lines[i] = lines[i] with { Tax = decimal.ToInt64(Math.Floor(exact[i])) };
        var missing = rules.Whole(exact.Values.Sum()) - ofRate.Sum(i => lines[i].Tax);
        foreach (var i in ofRate.OrderByDescending(i => exact[i] - Math.Floor(exact[i])).ThenBy(i => i).Take((int)missing))
            lines[i] = lines[i] with { Tax = lines[i].Tax + 1 };
    }
}
