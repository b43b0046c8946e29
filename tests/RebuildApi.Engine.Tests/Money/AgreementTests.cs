using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Money;

namespace RebuildApi.Engine.Tests.Money;

public sealed class AgreementTests
{
    [Theory]
    [InlineData(1000_00, 1100_00, false)]
    [InlineData(1000_00, 1100_01, true)]
    [InlineData(999_99, 1099_98, false)]
    [InlineData(999_99, 1099_99, true)]
    public void The_customer_is_asked_again_when_the_sum_grows_beyond_the_agreed_share(long agreed, long sum, bool asked) =>
        Assert.Equal(asked, new Agreement(agreed, 0.1m).NeedsApproval(sum));

    [Fact]
    public void Quote_approval_and_invoice_reconcile_for_any_tax_and_rounding() => Gen.Select(Some.Quote, Some.Rules).Sample((quote, rules) =>
    {
        var approved = Charges(Pricing.Price(quote.Where(l => l.Need != Need.Optional).Select(l => l.Price), rules));
        var found = Reconciliation.Of(approved, approved, 0, rules);
        Assert.True(found.Agrees);
        Assert.False(found.NeedsApproval);
        Assert.Equal(found.Approved, found.Invoiced);
    });

    [Fact]
    public void A_line_its_void_and_its_correction_reconcile_with_what_was_approved() => Gen.Select(Some.Quote, Some.Rules).Sample((quote, rules) =>
    {
        var approved = Charges(Pricing.Price(quote.Select(l => l.Price), rules));
        var first = approved[0];
        ImmutableArray<Charge> wrong = [first with { Net = first.Net + 1 }, first with { Net = -first.Net - 1, Tax = -first.Tax }];
        Assert.True(Reconciliation.Of(approved, [.. wrong, .. approved], 0, rules).Agrees);
    });

    [Fact]
    public void One_minor_unit_too_much_shows_on_its_line_and_in_the_sum()
    {
        ImmutableArray<Charge> approved = [new("hub", 100_00, 25_00), new("labour", 50_00, 12_50)];
        var found = Reconciliation.Of(approved, [approved[0] with { Net = 100_01 }, approved[1]], 0, Some.Euro);
        Assert.Equal(["charge-differs", "sum-above-agreed"], found.Reasons.Select(r => r.Code));
        Assert.True(found.NeedsApproval);
    }

    [Fact]
    public void What_was_never_approved_and_what_is_not_invoiced_yet_are_both_named()
    {
        var found = Reconciliation.Of([new("hub", 100_00, 25_00)], [new("sundries", 5_00, 1_25)], 0.1m, Some.Euro);
        Assert.Equal(["charge-not-invoiced", "charge-not-approved"], found.Reasons.Select(r => r.Code));
        Assert.False(found.NeedsApproval);
    }

    [Fact]
    public void A_quote_says_from_what_is_sure_to_what_may_come()
    {
        // 100.00 sure, 40.00 with one chance in four, 10.00 advised, all at 25 %: 125.00, 137.50, 187.50. Computed here, no source.
        QuoteLine Line(string id, long price, Need need, decimal chance) => new(new PriceLine(id, 1, price, 1, Some.Standard), need, chance);
        var sums = QuoteSums.Of(
            [Line("hub", 100_00, Need.Required, 1), Line("gear", 40_00, Need.Required, 0.25m), Line("seal", 10_00, Need.Recommended, 1), Line("paint", 90_00, Need.Optional, 1)],
            Some.Euro);
        Assert.Equal(new PriceRange(125_00, 137_50, 187_50), sums.Range);
        Assert.Equal((175_00, 12_50, 112_50), (sums.Required.Gross, sums.Recommended.Gross, sums.Optional.Gross));
    }

    [Fact]
    public void The_likely_price_lies_between_the_low_and_the_high_one() => Gen.Select(Some.Quote, Some.Rules).Sample((quote, rules) =>
    {
        var range = PriceRange.Of(quote, rules with { TaxRounding = TaxRounding.PerLine });
        Assert.True(range.Low <= range.Likely && range.Likely <= range.High);
    });

    private static ImmutableArray<Charge> Charges(ImmutableArray<PricedLine> lines) => [.. lines.Select(l => new Charge(l.Line.Id, l.Net, l.Tax))];
}
