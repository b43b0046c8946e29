namespace RebuildApi.Engine.Numerics;

/// <summary>The regularised incomplete beta function.</summary>
internal static class BetaFunction
{
    private const double Tiny = 1e-300;
    private const double Converged = 1e-16;
    private const int MaximumSteps = 100_000;

    /// <summary>
    /// I(x; a, b) for a, b &gt; 0. <paramref name="complement"/> is 1 − x, given apart so that x near 1 loses no digits
    /// (Abramowitz and Stegun 26.5.8, symmetry 26.5.2).
    /// </summary>
    public static double Regularised(double a, double b, double x, double complement)
    {
        if (x <= 0)
            return 0;
        if (complement <= 0)
            return 1;
        var front = Math.Exp(GammaFunction.Log(a + b) - GammaFunction.Log(a) - GammaFunction.Log(b) + a * Math.Log(x) + b * Math.Log(complement));
        return x < (a + 1) / (a + b + 2)
            ? front * Fraction(a, b, x) / a
            : 1 - front * Fraction(b, a, complement) / b;
    }

    /// <summary>The inverse: the x at which I(x; a, b) = probability.</summary>
    public static double Quantile(double a, double b, double probability) =>
        Root.OfIncreasing(x => Regularised(a, b, x, 1 - x) - probability, 0, 1);

    private static double Fraction(double a, double b, double x)
    {
        var c = 1.0;
        var d = 1 / NotZero(1 - (a + b) * x / (a + 1));
        var value = d;
        for (var m = 1; m < MaximumSteps; m++)
        {
            var even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / NotZero(1 + even * d);
            c = NotZero(1 + even / c);
            value *= c * d;
            var odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / NotZero(1 + odd * d);
            c = NotZero(1 + odd / c);
            value *= c * d;
            if (Math.Abs(c * d - 1) < Converged)
                break;
        }

        return value;
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;
}
