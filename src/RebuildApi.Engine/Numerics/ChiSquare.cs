namespace RebuildApi.Engine.Numerics;

/// <summary>The χ² distribution.</summary>
public static class ChiSquare
{
    /// <summary>The chance of a value of at most x.</summary>
    /// <param name="x">The value.</param>
    /// <param name="degreesOfFreedom">Positive.</param>
    public static double Cdf(double x, double degreesOfFreedom) => x <= 0 ? 0 : GammaFunction.Lower(degreesOfFreedom / 2, x / 2);

    /// <summary>The value that is not passed with the given probability, between 0 and 1 excluded.</summary>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        if (probability is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile needs a probability between 0 and 1.");
        var high = degreesOfFreedom + 10;
        while (Cdf(high, degreesOfFreedom) < probability)
            high *= 2;
        return Root.OfIncreasing(x => Cdf(x, degreesOfFreedom) - probability, 0, high);
    }
}
