using CsCheck;
using RebuildApi.Contracts;
using RebuildApi.Engine.Checking;
using RebuildApi.Engine.Conformity;
using RebuildApi.Engine.Numerics;
using RebuildApi.TestKit;

namespace RebuildApi.Engine.Tests.Checking;

public class CheckRuleTests
{
    private static readonly Gen<Policy> s_policies =
        from decision in Gen.Enum<DecisionRule>()
        from probability in Gen.Double[0.5001, 0.9999]
        select Policy.Default with { Decision = decision, Probability = probability };

    private static readonly Gen<Limits> s_limits =
        from low in Gen.Long[1_000_000, 2_000_000]
        from width in Gen.Long[0, 100_000]
        from ends in Gen.Int[0, 2]
        select new Limits(ends == 1 ? null : At(low), ends == 2 ? null : At(low + width), null, FamilyBuilder.Invented);

    [Fact]
    public void A_row_is_decided_as_a_verdict_on_the_same_value_is() =>
        Gen.Select(s_policies, s_limits, Gen.Long[990_000, 2_110_000], Gen.Double[0, 40_000]).Sample((policy, limits, nanometres, uncertainty) =>
        {
            var whole = Conformance.Assess("x", new Estimate(At(nanometres), uncertainty * 1e-9, null, null, null, EstimateBasis.Measured, []), limits, policy);

            var row = CheckRule.Of("x", limits, policy).Judge(nanometres, uncertainty);

            Assert.Equal(whole.Outcome, row.Outcome);
            Assert.Equal(whole.Probability!.Value, row.Probability, 1e-9);
            Assert.Equal(whole.Margin!.Value, row.Margin * 1e-9, 1e-15);
        }, iter: 20_000);

    // Computed here against the slower function of this library; no source.
    [Fact]
    public void The_fast_normal_distribution_is_the_slow_one_to_a_hundredth_of_a_millionth_of_a_millionth() =>
        Gen.Double[-40, 40].Sample(z => Assert.Equal(StandardNormal.Cdf(z), NormalTail.Cdf(z), 1e-14), iter: 20_000);

    // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1 (from memory): P(1) and P(1.96).
    [Theory]
    [InlineData(1.0, 0.841344746068543)]
    [InlineData(1.96, 0.975002104851780)]
    public void The_fast_normal_distribution_has_the_values_of_the_table(double z, double probability) =>
        Assert.Equal(probability, NormalTail.Cdf(z), 1e-12);

    private static Exact At(long nanometres) => new(new Length(nanometres));
}
