using System.Collections.Immutable;

namespace RebuildApi.Engine.Money;

/// <summary>What a quote comes to, with tax, in whole minor units.</summary>
/// <param name="Required">The required lines, whether sure or not: the sum that an approval of nothing else agrees to.</param>
/// <param name="Recommended">The recommended lines.</param>
/// <param name="Optional">The optional lines.</param>
/// <param name="Range">From what is sure to what may come.</param>
public sealed record QuoteSums(Totals Required, Totals Recommended, Totals Optional, PriceRange Range)
{
    /// <summary>Adds a quote up. Each need is priced as a document of its own, since that is what may be agreed to.</summary>
    public static QuoteSums Of(ImmutableArray<QuoteLine> lines, MoneyRules rules) => new(
        SumOf(lines, Need.Required, rules), SumOf(lines, Need.Recommended, rules), SumOf(lines, Need.Optional, rules), PriceRange.Of(lines, rules));

    private static Totals SumOf(ImmutableArray<QuoteLine> lines, Need need, MoneyRules rules) =>
        Totals.Of(Pricing.Price(lines.Where(l => l.Need == need).Select(l => l.Price), rules));
}

/// <summary>Between what and what the price will lie, with tax, in whole minor units.</summary>
/// <param name="Low">Only what is sure among the required lines.</param>
/// <param name="Likely">That, and each unsure line that is not optional by its chance, rounded on the line.</param>
/// <param name="High">Every required and recommended line.</param>
public sealed record PriceRange(long Low, long Likely, long High)
{
    /// <summary>The range of a quote.</summary>
    public static PriceRange Of(ImmutableArray<QuoteLine> lines, MoneyRules rules)
    {
        var sure = GrossOf(lines.Where(l => l.Need == Need.Required && l.Chance >= 1), rules);
        var unsure = lines.Where(l => l.Need != Need.Optional && l.Chance < 1).Sum(l => rules.Whole(l.Chance * GrossOf([l], rules)));
        return new PriceRange(sure, checked(sure + unsure), GrossOf(lines.Where(l => l.Need != Need.Optional), rules));
    }

    private static long GrossOf(IEnumerable<QuoteLine> lines, MoneyRules rules) => Totals.Of(Pricing.Price(lines.Select(l => l.Price), rules)).Gross;
}
