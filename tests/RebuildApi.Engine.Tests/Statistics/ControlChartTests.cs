using System.Collections.Immutable;
using CsCheck;
using RebuildApi.Engine.Numerics;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Tests.Statistics;

/// <summary>Piston rings, 40 samples of 5 (Montgomery, Introduction to statistical quality control): the first 25 make the limits.</summary>
public sealed class ControlChartTests
{
    private static readonly ImmutableArray<ImmutableArray<double>> Rings = PublishedData.Rows("PistonRings");

    [Fact]
    public void Mean_and_range_charts_have_the_published_limits()
    {
        var chart = ControlChart.MeanAndRange(Rings[..25]);

        Assert.Equal(74.001176, chart.Level.Centre, 5e-7);
        Assert.Equal(0.022760, chart.Spread.Centre, 5e-7);
        Assert.Equal(0.0097853, chart.Sigma, 5e-8);
        Assert.Equal(73.98805, chart.Level.Low, 5e-6);
        Assert.Equal(74.01430, chart.Level.High, 5e-6);
        Assert.Equal(0, chart.Spread.Low);
        Assert.Equal(0.048126, chart.Spread.High, 5e-7);
        Assert.Equal(2.1145, chart.Spread.High / chart.Spread.Centre, 1e-4); // D4
    }

    [Fact]
    public void Two_sigma_limits_are_the_published_ones()
    {
        var chart = ControlChart.MeanAndRange(Rings[..25], sigmas: 2);

        Assert.Equal(73.99242, chart.Level.Low, 5e-6);
        Assert.Equal(74.00993, chart.Level.High, 5e-6);
    }

    [Fact]
    public void Mean_and_deviation_charts_have_the_published_limits()
    {
        var chart = ControlChart.MeanAndDeviation(Rings[..25]);

        Assert.Equal(0.009240037, chart.Spread.Centre, 5e-10);
        Assert.Equal(73.987988, chart.Level.Low, 5e-7);
        Assert.Equal(74.014364, chart.Level.High, 5e-7);
        Assert.Equal(0.019302, chart.Spread.High, 5e-7);
    }

    [Fact]
    public void Samples_37_to_39_fall_above_the_limit()
    {
        var signals = ControlChart.MeanAndRange(Rings[..25]).Signals([.. Rings.Select(r => r.Average())]);

        Assert.Equal([74.0166, 74.0196, 74.0234], Rings[36..39].Select(r => Math.Round(r.Average(), 4)));
        Assert.Equal([37, 38, 39], signals.Where(s => s.Code == "beyond-limit").Select(s => s.Index + 1));
    }

    [Fact]
    public void Nine_points_on_one_side_are_a_run()
    {
        var chart = ControlChart.Individuals([10, 12, 10, 12, 10, 12]);

        var signals = chart.Signals([11.5, 11.5, 11.5, 11.5, 11.5, 11.5, 11.5, 11.5, 11.5, 10.5]);

        Assert.Equal(new ChartSignal(8, "run-on-one-side"), Assert.Single(signals));
    }

    [Fact]
    public void Single_values_are_charted_by_their_moving_ranges() // computed here: mean moving range 2, d2 = 1.128379, D4 = 3.2665
    {
        var chart = ControlChart.Individuals([10, 12, 10, 12]);

        Assert.Equal(11, chart.Level.Centre);
        Assert.Equal(2 / 1.128379, chart.Sigma, 1e-12);
        Assert.Equal(2 * (1 + 3 * 0.852502 / 1.128379), chart.Spread.High, 1e-12);
    }

    // Mean range of n standard normal values by quadrature: d2 = ∫ 1 − (1 − Φ)ⁿ − Φⁿ dx.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(10)]
    public void Mean_range_factor_is_its_integral(int n)
    {
        const double Step = 0.001;
        var integral = Step * Enumerable.Range(-9000, 18001).Sum(i =>
        {
            var phi = StandardNormal.Cdf(i * Step);
            return 1 - Math.Pow(1 - phi, n) - Math.Pow(phi, n);
        });
        ImmutableArray<double> unitRange = [0, .. Enumerable.Repeat(1.0, n - 1)];

        Assert.Equal(1 / integral, ControlChart.MeanAndRange([unitRange, unitRange]).Sigma, 1e-6);
    }

    [Fact]
    public void Limits_stand_off_alike_wherever_the_process_sits() => Gen.Double[-100, 100].Sample(shift =>
    {
        var moved = ControlChart.MeanAndRange([.. Rings[..25].Select(r => r.Select(x => x + shift).ToImmutableArray())]);
        return Math.Abs(moved.Level.High - shift - 74.01430) < 6e-6;
    }, iter: 20);
}
