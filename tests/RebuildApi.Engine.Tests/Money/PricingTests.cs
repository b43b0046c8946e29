using CsCheck;
using RebuildApi.Engine.Money;

namespace RebuildApi.Engine.Tests.Money;

public sealed class PricingTests
{
    // The base example of the public BIS Billing 3.0 specification, an implementation of EN 16931-1 (from memory of it; recomputed): 7 days at
    // 400.00, 3 pieces at 500.00 given back and a charge of 25.00, all at 25 %, come to 1325.00, tax 331.25, 1656.25 to pay.
    [Theory]
    [InlineData(TaxRounding.PerLine)]
    [InlineData(TaxRounding.PerRate)]
    public void The_example_of_the_invoice_standard_comes_to_its_printed_sums(TaxRounding taxed)
    {
        var lines = Pricing.Price(
            [new("days", 7, 400_00, 1, Some.Standard), new("back", -3, 500_00, 1, Some.Standard), new("charge", 1, 25_00, 1, Some.Standard)],
            Some.Euro with { TaxRounding = taxed });
        var totals = Totals.Of(lines);
        Assert.Equal([2800_00, -1500_00, 25_00], lines.Select(l => l.Net));
        Assert.Equal((1325_00, 331_25, 1656_25), (totals.Net, totals.Tax, totals.Gross));
    }

    [Fact]
    public void An_hourly_rate_meets_minutes_without_a_rounded_price_of_a_minute()
    {
        // 35 min at 70.00 an hour: 40.8333 → 40.83. A price of a minute rounded to 1.17 would give 40.95. Computed here, no source.
        var line = Pricing.Price([new("labour", 35, 70_00, 60, Some.Standard)], Some.Euro).Single();
        Assert.Equal((40_83, 10_21), (line.Net, line.Tax));
    }

    [Theory]
    [InlineData(Rounding.HalfUp, 3, -3)]
    [InlineData(Rounding.HalfEven, 2, -2)]
    public void A_half_goes_where_the_shop_says(Rounding rounding, long up, long down)
    {
        var rules = Some.Euro with { Rounding = rounding };
        Assert.Equal((up, down), (rules.Whole(2.5m), rules.Whole(-2.5m)));
    }

    [Fact]
    public void Lines_sum_to_their_totals_for_any_tax_and_rounding() => Gen.Select(Some.Lines, Some.Rules).Sample((lines, rules) =>
    {
        var priced = Pricing.Price(lines, rules);
        var totals = Totals.Of(priced);
        Assert.Equal(totals.Net, priced.Sum(l => l.Net));
        Assert.Equal(totals.Tax, priced.Sum(l => l.Tax));
        Assert.Equal(totals.Gross, priced.Sum(l => l.Gross));
        Assert.Equal(totals.Gross, totals.ByRate.Sum(r => r.Net + r.Tax));
    });

    // EN 16931-1, BR-CO-17 (from memory): tax of a category = its taxable amount × rate ÷ 100, rounded to two decimals.
    [Fact]
    public void Tax_rounded_for_each_rate_is_that_of_the_invoice_standard_and_no_line_is_off_by_a_unit() => Gen.Select(Some.Lines, Some.Rules).Sample((lines, rules) =>
    {
        var priced = Pricing.Price(lines, rules with { TaxRounding = TaxRounding.PerRate });
        foreach (var rate in Totals.Of(priced).ByRate)
            Assert.Equal(rules.Whole(rate.Net * rate.Rate.Percent / 100m), rate.Tax);
        foreach (var line in priced)
            Assert.True(Math.Abs(line.Tax - (line.Net * line.Line.Tax.Percent / 100m)) < 1);
    });

    [Fact]
    public void What_goes_back_takes_off_what_was_charged_to_the_last_unit() => Gen.Select(Some.Lines, Some.Rules).Sample((lines, rules) =>
    {
        var perLine = rules with { TaxRounding = TaxRounding.PerLine };
        var back = Pricing.Price(lines.Select(l => l with { Quantity = -l.Quantity }), perLine);
        Assert.Equal(-Totals.Of(Pricing.Price(lines, perLine)).Gross, Totals.Of(back).Gross);
    });

    [Theory]
    [InlineData(2, -7, "-0.07 EUR")]
    [InlineData(2, 123456, "1234.56 EUR")]
    [InlineData(0, 7, "7 EUR")]
    [InlineData(3, 1500, "1.500 EUR")]
    public void An_amount_is_shown_with_the_decimals_of_its_currency(int digits, long minor, string words) =>
        Assert.Equal(words, (Some.Euro with { Digits = digits }).Words(minor));

    [Fact]
    public void An_amount_that_cannot_be_kept_is_refused() =>
        Assert.Throws<OverflowException>(() => Pricing.Price([new("much", 1_000_000, long.MaxValue, 1, Some.Standard)], Some.Euro));
}
