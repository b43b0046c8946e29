namespace RebuildApi.Engine.Numerics;

/// <summary>The logarithm of the gamma function and the regularised incomplete gamma functions.</summary>
internal static class GammaFunction
{
    private const double Tiny = 1e-300;
    private const double Converged = 1e-16;
    private const int MaximumSteps = 10_000;

    /// <summary>ln Γ(x) for x &gt; 0: Stirling's series after lifting x above 15 (Abramowitz and Stegun 6.1.15 and 6.1.41).</summary>
    public static double Log(double x)
    {
        var lift = 0.0;
        while (x < 15)
        {
            lift += Math.Log(x);
            x++;
        }

        var square = 1 / (x * x);
        var series = (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square * (1.0 / 1680 - square * (1.0 / 1188 - square * 691.0 / 360360))))) / x;
        return (x - 0.5) * Math.Log(x) - x + 0.5 * Math.Log(2 * Math.PI) + series - lift;
    }

    /// <summary>P(a, x), the lower regularised incomplete gamma function, for a &gt; 0 and x ≥ 0.</summary>
    public static double Lower(double a, double x) => x < a + 1 ? Series(a, x) : 1 - Fraction(a, x);

    /// <summary>Q(a, x) = 1 − P(a, x), exact in the far tail.</summary>
    public static double Upper(double a, double x) => x < a + 1 ? 1 - Series(a, x) : Fraction(a, x);

    /// <summary>P by its power series (Abramowitz and Stegun 6.5.29).</summary>
    private static double Series(double a, double x)
    {
        if (x <= 0)
            return 0;
        var term = 1 / a;
        var sum = term;
        for (var n = 1; n < MaximumSteps && term > sum * Converged; n++)
        {
            term *= x / (a + n);
            sum += term;
        }

        return sum * Math.Exp(a * Math.Log(x) - x - Log(a));
    }

    /// <summary>Q by its continued fraction (Abramowitz and Stegun 6.5.31), summed by Lentz's method.</summary>
    private static double Fraction(double a, double x)
    {
        if (double.IsPositiveInfinity(x))
            return 0;
        var b = x + 1 - a;
        var c = 1 / Tiny;
        var d = 1 / b;
        var value = d;
        for (var n = 1; n < MaximumSteps; n++)
        {
            var numerator = -n * (n - a);
            b += 2;
            d = 1 / NotZero(numerator * d + b);
            c = NotZero(b + numerator / c);
            var factor = c * d;
            value *= factor;
            if (Math.Abs(factor - 1) < Converged)
                break;
        }

        return value * Math.Exp(a * Math.Log(x) - x - Log(a));
    }

    private static double NotZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;
}
