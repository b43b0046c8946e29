namespace RebuildApi.Engine.Numerics;

/// <summary>Student's t distribution. Infinite degrees of freedom, written as null, give the normal distribution.</summary>
public static class StudentT
{
    private const double NearlyNormal = 1e5;

    /// <summary>The chance of a value of at most t.</summary>
    /// <param name="t">The value.</param>
    /// <param name="degreesOfFreedom">Positive; null for infinite.</param>
    public static double Cdf(double t, double? degreesOfFreedom)
    {
        if (degreesOfFreedom is not { } nu || double.IsInfinity(nu))
            return StandardNormal.Cdf(t);
        if (nu <= 0)
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), nu, "Degrees of freedom are positive.");
        if (double.IsInfinity(t))
            return t < 0 ? 0 : 1;

        // So near to normal that the beta function would lose digits: Abramowitz and Stegun 26.7.8, error of the order of 1/ν².
        if (nu > NearlyNormal)
            return StandardNormal.Cdf(t * (1 - 1 / (4 * nu)) / Math.Sqrt(1 + t * t / (2 * nu)));

        // P(T > |t|) = I(ν/(ν+t²); ν/2, 1/2)/2 (Abramowitz and Stegun 26.7.1).
        var sum = nu + t * t;
        var tail = 0.5 * BetaFunction.Regularised(0.5 * nu, 0.5, nu / sum, t * t / sum);
        return t < 0 ? tail : 1 - tail;
    }

    /// <summary>The t that is not passed with the given probability.</summary>
    /// <param name="probability">Between 0 and 1, both excluded.</param>
    /// <param name="degreesOfFreedom">Positive; null for infinite.</param>
    public static double Quantile(double probability, double? degreesOfFreedom)
    {
        if (probability is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile needs a probability between 0 and 1.");
        if (degreesOfFreedom is not { } nu || double.IsInfinity(nu))
            return StandardNormal.Quantile(probability);
        if (probability == 0.5)
            return 0;
        if (probability > 0.5)
            return -Quantile(1 - probability, nu);

        var far = 2.0;
        while (Cdf(-far, nu) > probability)
            far *= 2;
        return Root.OfIncreasing(t => Cdf(t, nu) - probability, -far, 0);
    }
}
