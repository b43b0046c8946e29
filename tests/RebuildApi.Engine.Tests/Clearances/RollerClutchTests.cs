using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Tests.Clearances;

/// <summary>
/// The overrunning roller clutch of the tolerance literature, φ = acos((a + r)/(e − r)), hub radius 27.645, roller radius 11.430, ring radius
/// 50.800 mm: a stack that is not linear. The nominal angle is from memory of the literature and recomputed; the other figures are computed.
/// </summary>
public class RollerClutchTests
{
    private const double Degree = Math.PI / 180;

    [Fact] // A hundredth of the tolerances keeps the stack linear, as the published sum takes it.
    public void Contact_angle_of_7_018_degrees_varies_by_0_658_with_the_tolerances_by_root_sum_square()
    {
        var angle = Propagation.Through(x => Angle(x[0], x[1], x[2]), [
            new FormulaInput("hub", 27.645, 0.0005, null), new FormulaInput("roller", 11.430, 0.0001, null), new FormulaInput("ring", 50.800, 0.000125, null)]);

        Assert.Equal(7.018389803, angle.Value / Degree, 8);
        Assert.Equal(0.657877, 100 * angle.FirstOrder / Degree, 5);
    }

    [Fact] // Several papers print a ring of 101.69: that disagrees with the 0.122 rad printed beside it.
    public void Misprinted_ring_of_101_69_gives_an_angle_of_7_531_degrees()
    {
        var angle = Propagation.Through(x => Angle(27.645, 11.430, x[0] / 2), [new FormulaInput("ring", 101.69, 0.025, null)]);

        Assert.Equal(7.531110, angle.Value / Degree, 5);
    }

    [Fact] // Normal diameters, standard deviation 0.0793 (hub, ring) and 0.0043 (rollers); mean, deviation and chance by 5 million samples elsewhere.
    public void Chance_of_an_angle_between_5_and_9_degrees_is_0_995()
    {
        var result = MonteCarloPropagation.Run(
            Models.Of(x => Angle(x[0] / 2, (x[1] + x[2]) / 4, x[3] / 2)),
            [new NormalInput(55.29, 0.0793), new NormalInput(22.86, 0.0043), new NormalInput(22.86, 0.0043), new NormalInput(101.60, 0.0793)],
            new MonteCarloOptions(Digits: 3, MaximumTrials: 1 << 20));

        Assert.InRange(result.Mean, 0.121913 - 5e-5, 0.121913 + 5e-5);
        Assert.InRange(result.StandardUncertainty, 0.011832 - 5e-5, 0.011832 + 5e-5);
        Assert.InRange(result.ChanceWithin(5 * Degree, 9 * Degree), 0.9942, 0.9956);
    }

    private static double Angle(double hub, double roller, double ring) => Math.Acos((hub + roller) / (ring - roller));
}
