namespace RebuildApi.Engine.Numerics;

/// <summary>The normal distribution with mean 0 and standard deviation 1.</summary>
public static class StandardNormal
{
    /// <summary>Φ(z), the chance of a value of at most z; exact in both far tails.</summary>
    public static double Cdf(double z) => z < 0 ? UpperTail(-z) : 1 - UpperTail(z);

    /// <summary>φ(z), the density.</summary>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);

    /// <summary>The z with Φ(z) = probability.</summary>
    /// <param name="probability">0..1; the ends give the infinities.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a probability.</exception>
    public static double Quantile(double probability)
    {
        if (probability is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies in 0..1.");
        if (probability is 0 or 1)
            return probability == 0 ? double.NegativeInfinity : double.PositiveInfinity;
        return probability < 0.5 ? -FromUpperTail(probability) : FromUpperTail(1 - probability);
    }

    /// <summary>1 − Φ(z) for z ≥ 0, by Q(1/2, z²/2)/2.</summary>
    private static double UpperTail(double z) => z == 0 ? 0.5 : 0.5 * GammaFunction.Upper(0.5, 0.5 * z * z);

    /// <summary>
    /// The z that leaves <paramref name="tail"/> (at most 1/2) above it: Abramowitz and Stegun 26.2.23 (error below 4.5e-4), sharpened by
    /// Halley's steps on ln Q, which converge from there everywhere.
    /// </summary>
    private static double FromUpperTail(double tail)
    {
        var t = Math.Sqrt(-2 * Math.Log(tail));
        var z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
        for (var step = 0; step < 4; step++)
        {
            var error = (Cdf(-z) - tail) / Density(z);
            z += error / (1 - 0.5 * z * error);
        }

        return z;
    }
}
