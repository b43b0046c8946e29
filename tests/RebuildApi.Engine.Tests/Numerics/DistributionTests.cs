using CsCheck;
using MathNet.Numerics.Distributions;
using StudentT = RebuildApi.Engine.Numerics.StudentT;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Tests.Numerics;

/// <summary>Our distributions beside those of MathNet.Numerics, on random arguments.</summary>
public sealed class DistributionTests
{
    [Fact]
    public void Normal_agrees_with_a_reference_library() => Gen.Double[-8, 8].Sample(z =>
        Close(Normal.CDF(0, 1, z), StandardNormal.Cdf(z), 1e-12));

    [Fact]
    public void Normal_quantile_inverts_the_distribution_into_both_far_tails() => Gen.Double[-37, 37].Sample(z =>
    {
        var tail = StandardNormal.Cdf(-Math.Abs(z));
        return tail == 0 || Close(Math.Abs(z), -StandardNormal.Quantile(tail), 1e-12);
    });

    // The library loses digits where t is nearly nothing; the closed form of one degree of freedom covers that.
    [Fact]
    public void Student_s_t_agrees_with_a_reference_library() => Gen.Select(Gen.Double[0.01, 30], Gen.Double[0.7, 300]).Sample((t, nu) =>
        Close(StudentT_(t, nu), StudentT.Cdf(t, nu), 1e-9) && Close(StudentT_(-t, nu), StudentT.Cdf(-t, nu), 1e-9));

    [Fact]
    public void Student_s_t_with_one_degree_of_freedom_is_the_arctangent() => Gen.Double[-100, 100].Sample(t =>
        Close(0.5 + Math.Atan(t) / Math.PI, StudentT.Cdf(t, 1), 1e-13));

    [Fact]
    public void Student_s_t_quantile_inverts_the_distribution() => Gen.Select(Gen.Double[0.0005, 0.9995], Gen.Double[1, 300]).Sample((p, nu) =>
        Close(p, StudentT.Cdf(StudentT.Quantile(p, nu), nu), 1e-12));

    [Fact]
    public void Student_s_t_with_infinite_freedom_is_normal() => Gen.Double[-6, 6].Sample(z =>
        StudentT.Cdf(z, null).Equals(StandardNormal.Cdf(z)) && Close(StandardNormal.Cdf(z), StudentT.Cdf(z, 1e9), 1e-7));

    [Fact]
    public void Chi_square_agrees_with_a_reference_library() => Gen.Select(Gen.Double[0.01, 200], Gen.Double[0.5, 150]).Sample((x, nu) =>
        Close(ChiSquared.CDF(nu, x), ChiSquare.Cdf(x, nu), 1e-10));

    [Fact]
    public void Chi_square_quantile_inverts_the_distribution() => Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[1, 100]).Sample((p, nu) =>
        Close(p, ChiSquare.Cdf(ChiSquare.Quantile(p, nu), nu), 1e-11));

    [Fact]
    public void F_agrees_with_a_reference_library() => Gen.Select(Gen.Double[0.01, 20], Gen.Int[1, 60], Gen.Int[1, 60]).Sample((f, a, b) =>
        Close(1 - FisherSnedecor.CDF(a, b, f), FisherF.UpperTail(f, a, b), 1e-10));

    // JCGM 106:2012, Table 1: one-sided factors for 80, 90, 95, 99 and 99.9 %.
    [Theory]
    [InlineData(0.80, 0.84)]
    [InlineData(0.90, 1.28)]
    [InlineData(0.95, 1.64)]
    [InlineData(0.99, 2.33)]
    [InlineData(0.999, 3.09)]
    public void One_sided_factors_are_those_of_the_published_table(double probability, double printed) =>
        Assert.Equal(printed, Math.Round(StandardNormal.Quantile(probability), 2));

    // JCGM 106:2012, Table 1, to the digits computed here.
    [Theory]
    [InlineData(0.95, 1.644853627)]
    [InlineData(0.99, 2.326347874)]
    [InlineData(0.999, 3.090232306)]
    public void One_sided_factors_hold_to_ten_digits(double probability, double computed) =>
        Assert.Equal(computed, StandardNormal.Quantile(probability), 5e-10);

    // ISO 14253-1, 2017 edition: 1.65 u stands for 95 %; computed here.
    [Fact]
    public void Chance_beyond_1_65_standard_deviations_is_just_below_five_per_cent() =>
        Assert.Equal(0.0494714680, StandardNormal.Cdf(-1.65), 5e-11);

    private static double StudentT_(double t, double nu) => MathNet.Numerics.Distributions.StudentT.CDF(0, 1, nu, t);

    private static bool Close(double expected, double actual, double tolerance) =>
        Math.Abs(expected - actual) <= tolerance * Math.Max(1, Math.Abs(expected));
}
