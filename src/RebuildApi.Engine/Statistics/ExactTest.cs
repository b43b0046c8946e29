using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Statistics;

/// <summary>Fisher's exact test of two shares.</summary>
internal static class ExactTest
{
    /// <summary>Chance that the first share would be as high or higher if both had one rate (hypergeometric upper tail).</summary>
    public static double OneSided(Share first, Share second)
    {
        var (hits, all) = (first.Hits + second.Hits, first.Of + second.Of);
        var sum = 0.0;
        for (var k = first.Hits; k <= Math.Min(hits, first.Of); k++)
        {
            if (hits - k <= second.Of)
                sum += Math.Exp(LogChoose(first.Of, k) + LogChoose(second.Of, hits - k) - LogChoose(all, hits));
        }

        return Math.Min(1, sum);
    }

    private static double LogChoose(int n, int k) => GammaFunction.Log(n + 1) - GammaFunction.Log(k + 1) - GammaFunction.Log(n - k + 1);
}
