using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Tests.Statistics;

/// <summary>NIST Statistical Reference Datasets, univariate summary statistics: certified mean, s and lag-1 autocorrelation.</summary>
public sealed class DescriptiveTests
{
    [Theory]
    [InlineData("Lew", 200, -177.435, 277.332168044316, -0.307304800605679)]
    [InlineData("Lottery", 218, 518.958715596330, 291.699727470969, -0.120948622967393)]
    [InlineData("Mavro", 50, 2.001856, 0.000429123454003053, 0.937989183438248)]
    public void Certified_values_come_out(string set, int count, double mean, double deviation, double lagOne)
    {
        var found = Descriptive.Of(PublishedData.Column(set));

        Assert.Equal(count, found.Count);
        AssertRelative(mean, found.Mean, 1e-14);
        AssertRelative(deviation, found.StandardDeviation, 1e-12);
        AssertRelative(lagOne, found.LagOne, 1e-11);
    }

    [Fact]
    public void Numbers_that_differ_in_the_last_of_eight_digits_come_out() // NumAcc1
    {
        var found = Descriptive.Of([10_000_001, 10_000_003, 10_000_002]);

        Assert.Equal((10_000_002, 1, -0.5), (found.Mean, found.StandardDeviation, found.LagOne));
    }

    [Theory]
    [InlineData(1.2, 1.1, 1.3, 1.2, 1e-12)] // NumAcc2
    [InlineData(10_000_000.2, 10_000_000.1, 10_000_000.3, 10_000_000.2, 1e-8)] // NumAcc4: the data themselves are not exact doubles
    public void A_thousand_numbers_that_differ_in_the_first_decimal_come_out(double first, double low, double high, double mean, double tolerance)
    {
        ImmutableArray<double> values = [first, .. Enumerable.Range(0, 500).SelectMany(_ => new[] { low, high })];

        var found = Descriptive.Of(values);

        AssertRelative(mean, found.Mean, 1e-15);
        AssertRelative(0.1, found.StandardDeviation, tolerance);
        AssertRelative(-0.999, found.LagOne, tolerance);
    }

    [Fact]
    public void The_naive_formula_would_not_do() // what these data sets are there to catch
    {
        double[] values = [10_000_000.2, .. Enumerable.Range(0, 1000).Select(i => i % 2 == 0 ? 10_000_000.1 : 10_000_000.3)];

        var naive = (values.Sum(x => x * x) - values.Sum() * values.Sum() / values.Length) / (values.Length - 1);

        Assert.False(Math.Abs(Math.Sqrt(Math.Max(0, naive)) - 0.1) < 1e-3);
    }

    [Fact]
    public void Mean_and_deviation_agree_with_a_reference_library() => Gen.Double[-1e6, 1e6].Array[2, 60].Sample(values =>
    {
        var found = Descriptive.Of([.. values]);
        return Math.Abs(found.Mean - MathNet.Numerics.Statistics.Statistics.Mean(values)) <= 1e-9 * 1e6
            && Math.Abs(found.StandardDeviation - MathNet.Numerics.Statistics.Statistics.StandardDeviation(values)) <= 1e-9 * 1e6;
    });

    private static void AssertRelative(double expected, double actual, double tolerance) =>
        Assert.Equal(expected, actual, tolerance * Math.Abs(expected));
}
