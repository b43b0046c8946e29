using CsCheck;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Tests.Conformity;

public sealed class RiskTests
{
    // NCSLI RP-19 draft table (normal process and instrument, limits ±1, instrument a quarter of the process, no guard band), in per cent;
    // published to 1e-6.
    [Theory]
    [InlineData(0.60, 4.83860326, 8.26008199)]
    [InlineData(0.70, 3.92234109, 5.72322042)]
    [InlineData(0.80, 2.85583037, 3.63227145)]
    [InlineData(0.99, 0.19991684, 0.20243866)]
    public void False_accepts_are_those_of_the_published_table(double inTolerance, double percent, double percentOfAccepted)
    {
        var deviation = 1 / StandardNormal.Quantile((1 + inTolerance) / 2);

        var risk = GlobalRisk.Of(0, deviation, deviation / 4, -1, 1, -1, 1);

        Assert.Equal(percent, 100 * risk.FalseAccept, 1e-6);
        Assert.Equal(percentOfAccepted, 100 * risk.FalseAcceptOfAccepted, 1e-6);
    }

    // Deaver's cases: limits ±2, instrument a quarter of the process; the same scaled by four; and with a guard band at ±1.82.
    [Theory]
    [InlineData(1, 0.25, 2, 2, 0.0080060848, 0.0148508842)]
    [InlineData(4, 1, 8, 8, 0.0080060848, 0.0148508842)]
    [InlineData(1, 0.5, 2, 1.82, 0.0080516085, 0.0661064522)]
    public void False_accepts_and_rejects_are_the_published_ones(double process, double u, double limit, double accept, double falseAccept, double falseReject)
    {
        var risk = GlobalRisk.Of(0, process, u, -limit, limit, -accept, accept);

        Assert.Equal(falseAccept, risk.FalseAccept, 5e-10);
        Assert.Equal(falseReject, risk.FalseReject, 5e-10);
    }

    // Resistors in the manner of JCGM 106:2012, clause 9: 1500 Ω ± 0.2, process 0.12, u 0.04. Inputs from memory, risks computed here.
    [Theory]
    [InlineData(0.20, 0.0189422067, 0.0372078002)]
    [InlineData(0.18, 0.0098782915, 0.0690265105)]
    [InlineData(0.16, 0.0043340722, 0.1146565784)]
    [InlineData(0.12, 0.0004686336, 0.2476696402)]
    [InlineData(0.24, 0.0448981653, 0.0070970319)]
    public void A_narrower_acceptance_moves_risk_from_the_consumer_to_the_producer(double accept, double consumer, double producer)
    {
        var risk = GlobalRisk.Of(1500, 0.12, 0.04, 1499.8, 1500.2, 1500 - accept, 1500 + accept);

        Assert.Equal(0.9044192954, risk.Conformance, 1e-10);
        Assert.Equal(consumer, risk.FalseAccept, 5e-10);
        Assert.Equal(producer, risk.FalseReject, 5e-10);
    }

    // Specific risk and Cpk, limits 9..11, deviation 0.4: tests of a national laboratory's open library.
    [Theory]
    [InlineData(10.0, 0.01242, 0.00621, 0.833333)]
    [InlineData(10.5, 0.10574, 0.10565, 0.416667)]
    [InlineData(12.0, 0.99379, 0.99379, -0.833333)]
    public void Specific_risk_is_the_published_one(double mean, double beyond, double above, double capability)
    {
        var risk = SpecificRisk.Of(mean, 0.4, 9, 11);

        Assert.Equal(beyond, risk.Beyond, 5e-6);
        Assert.Equal(above, risk.Above, 5e-6);
        Assert.Equal(capability, risk.Capability, 5e-7);
    }

    [Fact]
    public void Chances_of_all_four_cases_add_up() => Gen.Select(Gen.Double[0.2, 2], Gen.Double[0.02, 1], Gen.Double[0.5, 2], Gen.Double[0.5, 2]).Sample((s, u, limit, accept) =>
    {
        var risk = GlobalRisk.Of(0, s, u, -limit, limit, -accept, accept);
        var spread = Math.Sqrt(s * s + u * u);
        var accepted = StandardNormal.Cdf(accept / spread) - StandardNormal.Cdf(-accept / spread);
        return Math.Abs(accepted - risk.Acceptance) < 1e-9
            && Math.Abs(risk.Conformance - risk.FalseReject + risk.FalseAccept - risk.Acceptance) < 1e-12;
    }, iter: 30);
}
