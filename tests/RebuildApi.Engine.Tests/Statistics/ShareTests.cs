using CsCheck;
using RebuildApi.Engine.Statistics;

namespace RebuildApi.Engine.Tests.Statistics;

public sealed class ShareTests
{
    // Exact interval of 2 in 20: 1.2 to 31.7 % at 95 % (computed here by the binomial tails).
    [Fact]
    public void Two_comebacks_in_twenty_may_be_anything_from_one_to_thirty_two_per_cent()
    {
        var share = Share.Counted(2, 20);

        Assert.Equal(0.1, share.Value);
        Assert.Equal(0.0123, share.Low, 5e-5);
        Assert.Equal(0.3170, share.High, 5e-5);
    }

    [Fact]
    public void No_comeback_in_ten_still_leaves_thirty_one_per_cent_open() =>
        Assert.Equal(1 - Math.Pow(0.025, 0.1), Share.Counted(0, 10).High, 1e-12); // (1 − p)¹⁰ = α/2

    [Fact]
    public void Each_end_leaves_its_tail_of_the_binomial() => Gen.Select(Gen.Int[1, 60], Gen.Int[0, 60], Gen.Double[0.5, 0.99]).Where(x => x.Item2 <= x.Item1)
        .Sample((of, hits, confidence) =>
        {
            var share = Share.Counted(hits, of, confidence);
            var tail = (1 - confidence) / 2;
            var below = hits == 0 || Math.Abs(1 - MathNet.Numerics.Distributions.Binomial.CDF(share.Low, of, hits - 1) - tail) < 1e-9;
            var above = hits == of || Math.Abs(MathNet.Numerics.Distributions.Binomial.CDF(share.High, of, hits) - tail) < 1e-9;
            return below && above;
        });
}
