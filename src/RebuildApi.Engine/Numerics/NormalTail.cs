namespace RebuildApi.Engine.Numerics;

/// <summary>
/// The normal distribution function for millions of rows: a ratio of polynomials, without series or allocation. J. F. Hart et al., Computer
/// Approximations (Wiley 1968), algorithm 5666, with a continued fraction beyond 7.07 (coefficients from memory; a test holds it against
/// <see cref="StandardNormal"/> to 1e-14).
/// </summary>
public static class NormalTail
{
    private const double Far = 7.07106781186547;
    private const double RootTwoPi = 2.506628274631;

    /// <summary>Φ(z), the chance of a value of at most z.</summary>
    public static double Cdf(double z)
    {
        var tail = Upper(Math.Abs(z));
        return z > 0 ? 1 - tail : tail;
    }

    private static double Upper(double z)
    {
        if (z > 37)
            return 0;
        var density = Math.Exp(-0.5 * z * z);
        return z < Far ? density * Near(z) : density / (Fraction(z) * RootTwoPi);
    }

    private static double Near(double z)
    {
        var above = (((((3.52624965998911e-2 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z + 112.079291497871) * z
            + 221.213596169931) * z + 220.206867912376;
        var below = ((((((8.83883476483184e-2 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z + 296.564248779674) * z
            + 637.333633378831) * z + 793.826512519948) * z + 440.413735824752;
        return above / below;
    }

    private static double Fraction(double z) => z + 1 / (z + 2 / (z + 3 / (z + 4 / (z + 0.65))));
}
