using CsCheck;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Tests.MonteCarlo;

public sealed class MonteCarloTests
{
    [Fact]
    public void The_same_seed_gives_the_same_answer_on_any_number_of_threads()
    {
        var inputs = new InputDistribution[] { new NormalInput(1, 0.1), new StudentInput(2, 0.1, 3), new TriangularInput(0, 1), new ArcsineInput(0, 1) };

        var alone = MonteCarloPropagation.Run(Models.Linear(0, 1, 1, 1, 1), [.. inputs], new MonteCarloOptions(Seed: 7));
        var together = MonteCarloPropagation.Run(Models.Linear(0, 1, 1, 1, 1), [.. inputs], new MonteCarloOptions(Seed: 7, Threads: 4));

        Assert.Equal(alone with { Sorted = default }, together with { Sorted = default });
        Assert.Equal(alone.Sorted.ToArray(), together.Sorted.ToArray());
    }

    [Fact]
    public void Another_seed_gives_other_numbers()
    {
        var first = MonteCarloPropagation.Run(Models.Linear(0, 1), [new NormalInput(0, 1)], new MonteCarloOptions(Seed: 1, Digits: 1));
        var second = MonteCarloPropagation.Run(Models.Linear(0, 1), [new NormalInput(0, 1)], new MonteCarloOptions(Seed: 2, Digits: 1));

        Assert.NotEqual(first.Mean, second.Mean);
    }

    [Fact]
    public void Trials_stop_when_the_digits_asked_for_are_sound()
    {
        var coarse = MonteCarloPropagation.Run(Models.Linear(0, 1), [new NormalInput(0, 3)], new MonteCarloOptions(Digits: 1));
        var fine = MonteCarloPropagation.Run(Models.Linear(0, 1), [new NormalInput(0, 3)], new MonteCarloOptions(Digits: 2));

        // u = 3.0: half a unit of its last digit is 0.05 for two digits and 0.5 for one (JCGM 101:2008, 7.9.2).
        Assert.Equal((0.5, 0.05), (coarse.Tolerance, Math.Round(fine.Tolerance, 12)));
        Assert.True(coarse.IsStable && fine.IsStable);
        Assert.True(coarse.Trials < fine.Trials);
    }

    [Fact]
    public void An_answer_that_did_not_settle_says_so()
    {
        var result = MonteCarloPropagation.Run(Models.Linear(0, 1), [new StudentInput(0, 1, 1)], new MonteCarloOptions(MaximumTrials: 100_000));

        Assert.False(result.IsStable);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Draws_have_the_mean_and_deviation_of_their_distribution(int which)
    {
        InputDistribution input = which switch
        {
            0 => new NormalInput(5, 2),
            1 => new TriangularInput(-1, 3),
            2 => new ArcsineInput(-1, 3),
            _ => new TrapezoidInput(-1, 3, 0.5),
        };

        var result = MonteCarloPropagation.Run(Models.Linear(0, 1), [input], new MonteCarloOptions(Digits: 2));

        Assert.Equal(input.Mean, result.Mean, 0.01 * input.StandardUncertainty);
        Assert.Equal(input.StandardUncertainty, result.StandardUncertainty, 0.01 * input.StandardUncertainty);
    }

    [Fact]
    public void Normal_numbers_follow_the_normal_distribution_into_the_tails()
    {
        var result = MonteCarloPropagation.Run(Models.Linear(0, 1), [new NormalInput(0, 1)], new MonteCarloOptions(Seed: 3));

        foreach (var z in new[] { -3.0, -2, -1, 0, 0.5, 1.5, 2.5, 3.5 })
        {
            var expected = RebuildApi.Engine.Numerics.StandardNormal.Cdf(z);
            var fiveSigma = 5 * Math.Sqrt(expected * (1 - expected) / result.Trials);
            Assert.Equal(expected, result.ChanceWithin(null, z), fiveSigma);
        }
    }

    [Fact]
    public void The_shortest_interval_is_never_longer_than_the_symmetric_one() => Gen.Double[0.5, 0.99].Sample(coverage =>
    {
        var result = MonteCarloPropagation.Run(
            Models.Of(x => x[0] * x[0]), [new NormalInput(0, 1)], new MonteCarloOptions(Coverage: coverage, Digits: 1));
        return result.Shortest.Width <= result.Symmetric.Width;
    }, iter: 10);
}
