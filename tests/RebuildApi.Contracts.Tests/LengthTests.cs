using System.Globalization;
using CsCheck;

namespace RebuildApi.Contracts.Tests;

/// <summary>One inch is exactly 25.4 mm (NIST SP 811, appendix B.8).</summary>
public sealed class LengthTests
{
    [Theory]
    [InlineData("1", 25_400_000)]
    [InlineData("0.0001", 2_540)]
    [InlineData("0.00005", 1_270)]
    [InlineData("0.015", 381_000)]
    [InlineData("-0.002", -50_800)]
    public void Inches_are_exact_in_nanometres(string inches, long nanometres) =>
        Assert.Equal(nanometres, Length.Inches(decimal.Parse(inches, CultureInfo.InvariantCulture)).Nanometres);

    [Theory]
    [InlineData("62.05", 62_050_000)]
    [InlineData("0.000001", 1)]
    public void Millimetres_are_exact_in_nanometres(string millimetres, long nanometres) =>
        Assert.Equal(nanometres, Length.Millimetres(decimal.Parse(millimetres, CultureInfo.InvariantCulture)).Nanometres);

    [Fact]
    public void A_mil_is_25_4_micrometres() => Assert.Equal(Length.Micrometres(25.4m), Length.Inches(0.001m));

    [Fact]
    public void Digits_beyond_the_nanometre_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Millimetres(0.0000001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Micrometres(0.0001m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inches(0.00000001m));
    }

    [Fact]
    public void A_length_that_cannot_be_kept_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Millimetres(10_000_000_000_000m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inches(decimal.MaxValue));
    }

    [Fact]
    public void Sums_that_overflow_throw_and_never_wrap()
    {
        var longest = new Length(long.MaxValue);

        Assert.Throws<OverflowException>(() => longest + new Length(1));
        Assert.Throws<OverflowException>(() => -longest - new Length(2));
        Assert.Throws<OverflowException>(() => 2 * longest);
        Assert.Throws<OverflowException>(() => -new Length(long.MinValue));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void An_estimate_that_is_no_length_is_refused(double metres) =>
        Assert.Throws<OverflowException>(() => Length.NearestToMetres(metres));

    [Fact]
    public void Every_nanometre_survives_inches_and_back() =>
        Gen.Long[-1_000_000_000_000, 1_000_000_000_000].Sample(nanometres =>
            decimal.Round(new Length(nanometres).InInches * 25_400_000m) == nanometres);

    [Fact]
    public void The_order_of_a_sum_does_not_matter() =>
        Gen.Long[-1_000_000_000, 1_000_000_000].Array[1, 30].Sample(parts =>
            Sum(parts) == Sum(parts.Reverse()));

    [Fact]
    public void A_length_is_written_with_a_point_whatever_the_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("62.05 mm", Length.Millimetres(62.05m).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Length Sum(IEnumerable<long> nanometres) => nanometres.Select(n => new Length(n)).Aggregate(Length.Zero, (a, b) => a + b);
}
