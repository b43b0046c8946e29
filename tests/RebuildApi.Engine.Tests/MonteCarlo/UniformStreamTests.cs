using System.Numerics;
using CsCheck;
using RebuildApi.Engine.MonteCarlo;

namespace RebuildApi.Engine.Tests.MonteCarlo;

/// <summary>The stream beside the published generators, written plainly lane by lane: SplitMix64 and xoshiro256+.</summary>
public sealed class UniformStreamTests
{
    [Fact]
    public void Each_lane_is_the_published_generator() => Gen.Select(Gen.ULong, Gen.ULong).Sample((seed, number) =>
    {
        var stream = new UniformStream(seed, number);
        var block = new double[5 * UniformStream.Lanes];
        stream.Fill(block);
        return Enumerable.Range(0, UniformStream.Lanes).All(lane =>
            OneLane(seed, number, lane).Take(5).Select((x, i) => block[i * UniformStream.Lanes + lane].Equals(x)).All(same => same));
    }, iter: 50);

    [Fact]
    public void Two_fills_go_on_where_one_would()
    {
        var (one, two) = (new UniformStream(5, 6), new UniformStream(5, 6));
        var (whole, parts) = (new double[64], new double[64]);

        one.Fill(whole);
        two.Fill(parts.AsSpan(0, 32));
        two.Fill(parts.AsSpan(32));

        Assert.Equal(whole, parts);
    }

    [Fact]
    public void Numbers_stay_off_both_ends()
    {
        var block = new double[1 << 16];
        new UniformStream(9, 9).Fill(block);

        Assert.All(new[] { block.Min(), block.Max() }, x => Assert.InRange(x, double.Epsilon, Math.BitDecrement(1.0)));
        Assert.Equal(0.5, block.Average(), 0.006); // five standard deviations of the mean of 65 536
    }

    [Fact]
    public void Streams_of_one_seed_are_unrelated()
    {
        var (first, second) = (new double[1 << 14], new double[1 << 14]);
        new UniformStream(1, 1).Fill(first);
        new UniformStream(1, 2).Fill(second);

        var correlation = 12 * first.Zip(second, (a, b) => (a - 0.5) * (b - 0.5)).Average();

        Assert.InRange(correlation, -0.04, 0.04); // five standard deviations: 5/√16384
    }

    private static IEnumerable<double> OneLane(ulong seed, ulong number, int lane)
    {
        var state = Mix(seed) ^ Mix(unchecked(number * 0xD1B54A32D192ED03 + 0x8CB92BA72F3D8DD7));
        var words = Enumerable.Range(0, 64).Select(_ => Mix(state = unchecked(state + 0x9E3779B97F4A7C15))).ToArray();
        var s = Enumerable.Range(0, 4).Select(i => words[lane / 8 * 32 + 8 * i + lane % 8]).ToArray();
        while (true)
        {
            var result = unchecked(s[0] + s[3]);
            var t = s[1] << 17;
            s[2] ^= s[0];
            s[3] ^= s[1];
            s[1] ^= s[2];
            s[0] ^= s[3];
            s[2] ^= t;
            s[3] = BitOperations.RotateLeft(s[3], 45);
            yield return (2 * (result >> 12) + 1) / (double)(1UL << 53);
        }
    }

    private static ulong Mix(ulong z)
    {
        z = unchecked((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9);
        z = unchecked((z ^ (z >> 27)) * 0x94D049BB133111EB);
        return z ^ (z >> 31);
    }
}
