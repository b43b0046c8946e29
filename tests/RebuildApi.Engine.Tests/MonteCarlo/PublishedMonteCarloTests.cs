using System.Collections.Immutable;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Tests.MonteCarlo;

/// <summary>Worked examples of JCGM 101:2008, clause 9; exact values computed here by quadrature or closed form.</summary>
public sealed class PublishedMonteCarloTests
{
    private static readonly MonteCarloOptions Long = new(Seed: 20_080_101, Digits: 4, MaximumTrials: 1_000_000, Threads: 2);
    private static readonly double RootThree = Math.Sqrt(3);

    // 9.2.2: four standard normal inputs, printed ±3.92.
    [Fact]
    public void Four_normal_inputs_add_as_published()
    {
        var result = MonteCarloPropagation.Run(Models.Linear(0, 1, 1, 1, 1), [.. Four(new NormalInput(0, 1))], Long);

        Assert.Equal(2.00, result.StandardUncertainty, 0.01);
        Assert.Equal(3.92, result.Shortest.Width / 2, 0.02);
        Assert.Equal(3.92, result.Symmetric.High, 0.03);
        Assert.Equal(3.919927969, 2 * ExpandedUncertainty.Of(1, null).Factor, 5e-9);
    }

    // 9.2.3: four rectangular inputs of unit standard deviation, printed ±3.88; exactly 2√3(2 − (3/5)^¼).
    [Fact]
    public void Four_rectangular_inputs_add_to_a_shorter_interval_than_the_budget_gives()
    {
        var result = MonteCarloPropagation.Run(Models.Linear(0, 1, 1, 1, 1), [.. Four(new RectangularInput(-RootThree, RootThree))], Long);

        Assert.Equal(2.00, result.StandardUncertainty, 0.01);
        Assert.Equal(2 * RootThree * (2 - Math.Pow(0.6, 0.25)), result.Shortest.Width / 2, 0.015);
        Assert.Equal(3.879406741, 2 * RootThree * (2 - Math.Pow(0.6, 0.25)), 5e-10);
        Assert.Equal(3.88, Math.Round(2 * RootThree * (2 - Math.Pow(0.6, 0.25)), 2));
    }

    // 9.2.4: one of the four ten times wider, printed u 10.1 and ±17.0 against ±19.9 from the budget.
    [Fact]
    public void A_dominant_rectangular_input_makes_the_budget_s_interval_too_long()
    {
        ImmutableArray<InputDistribution> inputs = [.. Four(new RectangularInput(-RootThree, RootThree))[..3], new RectangularInput(-10 * RootThree, 10 * RootThree)];

        var result = MonteCarloPropagation.Run(Models.Linear(0, 1, 1, 1, 1), inputs, Long);

        Assert.Equal(10.1, result.StandardUncertainty, 0.06);
        Assert.Equal(17.0158, result.Shortest.Width / 2, 0.05);
        Assert.Equal(19.891462, ExpandedUncertainty.Of(Math.Sqrt(103), null).Uncertainty, 5e-7); // the guide prints 19.9
    }

    // 9.3: mass calibration. Printed 1.2341 and 0.0754 mg; exact u 0.0754797. The shortest interval of a flat-topped density has ends that
    // move by 0.0015 between runs, while its width of 0.2990 stays.
    [Fact]
    public void Mass_calibration_has_the_published_uncertainty()
    {
        ImmutableArray<InputDistribution> inputs =
        [
            new NormalInput(100_000, 0.050), new NormalInput(1.234, 0.020), new RectangularInput(1.10, 1.30),
            new RectangularInput(7000, 9000), new RectangularInput(7950, 8050),
        ];

        var result = MonteCarloPropagation.Run(Models.Of(MassDifference), inputs, Long);

        Assert.Equal(1.2340, result.Mean, 0.0005);
        Assert.Equal(0.0754797, result.StandardUncertainty, 0.0003);
        Assert.Equal(0.2990, result.Shortest.Width, 0.002);
        Assert.Equal(1.0834, result.Shortest.Low, 0.003);
        Assert.Equal(1.3825, result.Shortest.High, 0.003);
    }

    // 9.3: printed 0.0539 to first order and 0.0750 with higher-order terms.
    [Fact]
    public void Mass_calibration_fails_to_first_order_and_is_mended_by_the_second()
    {
        ImmutableArray<FormulaInput> inputs =
        [
            new("reference", 100_000, 0.050, null), new("small reference", 1.234, 0.020, null), new("air", 1.20, 0.10 / RootThree, null),
            new("weight density", 8000, 1000 / RootThree, null), new("reference density", 8000, 50 / RootThree, null),
        ];

        var result = Propagation.Through(MassDifference, inputs);

        Assert.Equal(1.2340, result.Value, 0.00005);
        Assert.Equal(0.0539, result.FirstOrder, 0.00005);
        Assert.Equal(1.1285, result.Value - ExpandedUncertainty.Of(result.FirstOrder, null).Uncertainty, 0.0001);
        Assert.Equal(1.3395, result.Value + ExpandedUncertainty.Of(result.FirstOrder, null).Uncertainty, 0.0001);
        Assert.False(result.FirstOrderSuffices);

        Assert.Equal(0.0538516, result.FirstOrder, 5e-8);
        Assert.Equal(1.128453, result.Value - ExpandedUncertainty.Of(result.FirstOrder, null).Uncertainty, 2e-6);
        Assert.Equal(1.339547, result.Value + ExpandedUncertainty.Of(result.FirstOrder, null).Uncertainty, 2e-6);

        // Higher order, printed 1.0870..1.3810.
        Assert.Equal(1.0870, result.Value - ExpandedUncertainty.Of(result.SecondOrder, null).Uncertainty, 0.0016);
        Assert.Equal(1.3810, result.Value + ExpandedUncertainty.Of(result.SecondOrder, null).Uncertainty, 0.0016);

        // Steps of one standard uncertainty bend with 1/ρ a little more than the derivatives at the point: 0.0750 printed, within 1 %.
        Assert.Equal(0.0750, result.SecondOrder, 0.0008);
    }

    // 9.4: squared sum in units of 1e-6. Printed MCM intervals 0..150, 0..367, 1590..3543; exact as computed here.
    [Theory]
    [InlineData(0.000, 50, 50, 0, 149.7866)]
    [InlineData(0.010, 150, 111.8034, 0, 366.01)]
    [InlineData(0.050, 2550, 502.4938, 1593.6, 3548.6)]
    public void A_sum_of_squares_is_right_even_where_its_slope_is_nothing(double x1, double mean, double u, double low, double high)
    {
        var result = MonteCarloPropagation.Run(
            Models.Of(SquaredSum), [new NormalInput(x1, 0.005), new NormalInput(0, 0.005)], Long);

        Assert.Equal(mean, result.Mean * 1e6, 0.006 * u);
        Assert.Equal(u, result.StandardUncertainty * 1e6, 0.01 * u);
        Assert.Equal(low, result.Shortest.Low * 1e6, 0.05 * u);
        Assert.Equal(high, result.Shortest.High * 1e6, 0.05 * u);
    }

    // 9.4: the first-order budget gives 0, 100 and 500 (1e-6) where 50, 111.8 and 502.5 are right.
    [Theory]
    [InlineData(0.000, 0, 50)]
    [InlineData(0.010, 100, 111.8034)]
    [InlineData(0.050, 500, 502.4938)]
    public void A_first_order_budget_fails_at_a_stationary_point_and_says_so(double x1, double firstOrder, double exact)
    {
        var result = Propagation.Through(SquaredSum, [new("x1", x1, 0.005, null), new("x2", 0, 0.005, null)]);

        Assert.Equal(x1 * x1, result.Value, 1e-15);
        Assert.Equal(firstOrder, result.FirstOrder * 1e6, 1e-6);
        Assert.Equal(exact, result.SecondOrder * 1e6, 1e-4);
        Assert.Equal(x1 == 0.050, result.FirstOrderSuffices);
    }

    // 9.5: gauge block, nm from 50 mm, 99 %. Printed MCM 838, 36, 745..932; 35.800 and 744.98..932.32 computed here.
    [Fact]
    public void Gauge_block_has_the_published_uncertainty_and_interval()
    {
        ImmutableArray<InputDistribution> inputs =
        [
            new StudentInput(50_000_623, 25, 18), new StudentInput(215, 6, 24), new StudentInput(0, 4, 5), new StudentInput(0, 7, 8),
            new RectangularInput(9.5e-6, 13.5e-6), new NormalInput(-0.1, 0.2), new ArcsineInput(-0.5, 0.5),
            new TrapezoidInput(-1e-6, 1e-6, 0.1e-6), new TrapezoidInput(-0.050, 0.050, 0.025),
        ];

        var result = MonteCarloPropagation.Run(
            Models.Of(x => x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]) - 50_000_000), inputs, Long with { Coverage = 0.99 });

        Assert.Equal(838, result.Mean, 0.5);
        Assert.Equal(36, result.StandardUncertainty, 0.5);
        Assert.Equal(745, result.Shortest.Low, 1.5);
        Assert.Equal(932, result.Shortest.High, 1.5);
    }

    private static InputDistribution[] Four(InputDistribution input) => [input, input, input, input];

    private static double MassDifference(double[] x) => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;

    private static double SquaredSum(double[] x) => x[0] * x[0] + x[1] * x[1];
}
