namespace RebuildApi.Checkers.Plans;

/// <summary>
/// Student's distribution by plain integration. With t = √ν·tan φ its density is cosᵛ⁻¹φ, up to a constant, for every ν of at least 1; with many degrees of
/// freedom the density itself is integrated, and with infinitely many the normal one.
/// </summary>
public static class Student
{
    private const int Steps = 400;
    private const double Few = 30;
    private const double Far = 12;

    // Beyond that the normal density is the same to more digits than are asked, and the logarithms below would lose theirs.
    private const double AsGoodAsInfinite = 1e6;

    /// <summary>Chance that it lies at or below t.</summary>
    public static double ChanceBelow(double t, double freedom)
    {
        var half = freedom <= Few ? ByAngle(Math.Abs(t), freedom) : Area(Density(freedom), Math.Min(Math.Abs(t), Far));
        return t < 0 ? 0.5 - half : 0.5 + half;
    }

    private static double ByAngle(double t, double freedom)
    {
        double Density(double angle) => Math.Pow(Math.Cos(angle), freedom - 1);
        return Area(Density, Math.Atan(t / Math.Sqrt(freedom))) / (2 * Area(Density, Math.PI / 2));
    }

    /// <summary>Γ((ν+1)/2) / (√(νπ)·Γ(ν/2)) · (1 + t²/ν)^−(ν+1)/2.</summary>
    private static Func<double, double> Density(double freedom)
    {
        if (freedom > AsGoodAsInfinite)
            return t => Math.Exp(-t * t / 2) / Math.Sqrt(2 * Math.PI);
        var scale = Math.Exp(LogGamma((freedom + 1) / 2) - LogGamma(freedom / 2)) / Math.Sqrt(freedom * Math.PI);
        return t => scale * Math.Pow(1 + (t * t / freedom), -(freedom + 1) / 2);
    }

    /// <summary>Stirling's series; its argument is above 15 here, where it is good to 1e-12.</summary>
    private static double LogGamma(double x) => ((x - 0.5) * Math.Log(x)) - x + (0.5 * Math.Log(2 * Math.PI)) + (1 / (12 * x)) - (1 / (360 * x * x * x));

    /// <summary>From 0 to an end, by Simpson's rule.</summary>
    private static double Area(Func<double, double> density, double end)
    {
        var step = end / Steps;
        var sum = density(0) + density(end);
        for (var i = 1; i < Steps; i++)
            sum += (i % 2 == 0 ? 2 : 4) * density(i * step);
        return sum * step / 3;
    }
}
