namespace RebuildApi.Engine.Numerics;

/// <summary>The F distribution of a ratio of two variances.</summary>
public static class FisherF
{
    /// <summary>The chance of a ratio above f: the p-value of an F test, exact in the far tail (Abramowitz and Stegun 26.6.2).</summary>
    /// <param name="f">The ratio, not negative.</param>
    /// <param name="numerator">Degrees of freedom above, positive.</param>
    /// <param name="denominator">Degrees of freedom below, positive.</param>
    public static double UpperTail(double f, double numerator, double denominator)
    {
        if (f <= 0)
            return 1;
        if (double.IsPositiveInfinity(f))
            return 0;
        var sum = denominator + numerator * f;
        return BetaFunction.Regularised(denominator / 2, numerator / 2, denominator / sum, numerator * f / sum);
    }
}
