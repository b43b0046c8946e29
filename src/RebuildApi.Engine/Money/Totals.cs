using System.Collections.Immutable;

namespace RebuildApi.Engine.Money;

/// <summary>What lines come to, in whole minor units. Always the plain sum of the lines.</summary>
/// <param name="Net">Without tax.</param>
/// <param name="Tax">Tax.</param>
/// <param name="ByRate">The same for each rate, in the order in which the rates first occur.</param>
public sealed record Totals(long Net, long Tax, ImmutableArray<RateTotal> ByRate)
{
    /// <summary>With tax.</summary>
    public long Gross => checked(Net + Tax);

    /// <summary>Adds lines up.</summary>
    /// <exception cref="OverflowException">The sum is larger than 64 bits hold.</exception>
    public static Totals Of(IEnumerable<PricedLine> lines)
    {
        ImmutableArray<RateTotal> rates = [.. lines.GroupBy(l => l.Line.Tax).Select(g => new RateTotal(g.Key, Sum(g, l => l.Net), Sum(g, l => l.Tax)))];
        return new Totals(Sum(rates, r => r.Net), Sum(rates, r => r.Tax), rates);
    }

    private static long Sum<T>(IEnumerable<T> items, Func<T, long> amount) => items.Aggregate(0L, (sum, item) => checked(sum + amount(item)));
}

/// <summary>What the lines of one rate of tax come to.</summary>
/// <param name="Rate">The rate.</param>
/// <param name="Net">Without tax.</param>
/// <param name="Tax">Tax.</param>
public sealed record RateTotal(TaxRate Rate, long Net, long Tax);
