namespace RebuildApi.Engine.Mechanics;

/// <summary>Rolling elements of a bearing.</summary>
public enum RollingElement
{
    /// <summary>Balls: exponent p = 3.</summary>
    Ball,

    /// <summary>Rollers or needles: exponent p = 10/3.</summary>
    Roller,
}

/// <summary>Rating life of rolling bearings (ISO 281:2007). Forces in newtons or any one unit; lives in revolutions.</summary>
public static class BearingLife
{
    private const double Million = 1e6;

    // ISO 281:2007, life modification factor for reliability (from memory of the standard's table).
    private static readonly (double Reliability, double Factor)[] s_reliability =
        [(0.90, 1), (0.95, 0.64), (0.96, 0.55), (0.97, 0.47), (0.98, 0.37), (0.99, 0.25)];

    /// <summary>L10 = (C/P)^p · 10⁶ revolutions.</summary>
    /// <param name="dynamicRating">C.</param>
    /// <param name="equivalentLoad">P, of the same unit; positive.</param>
    /// <param name="element">Balls or rollers.</param>
    public static double BasicRatingLife(double dynamicRating, double equivalentLoad, RollingElement element)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dynamicRating);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(equivalentLoad);
        return Math.Pow(dynamicRating / equivalentLoad, Exponent(element)) * Million;
    }

    /// <summary>Lnm = a1 · aISO · L10, revolutions; the life that a share of like bearings reaches.</summary>
    /// <param name="basicLife">L10.</param>
    /// <param name="reliability">0.90, 0.95, 0.96, 0.97, 0.98 or 0.99.</param>
    /// <param name="condition">aISO, for lubrication and cleanliness; 1 when it is not known.</param>
    public static double AdjustedLife(double basicLife, double reliability, double condition = 1) => ReliabilityFactor(reliability) * condition * basicLife;

    /// <summary>a1 of a reliability (ISO 281:2007, from memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reliability that the standard does not list.</exception>
    public static double ReliabilityFactor(double reliability)
    {
        var row = s_reliability.FirstOrDefault(r => Math.Abs(r.Reliability - reliability) < 1e-9);
        return row.Factor > 0 ? row.Factor : throw new ArgumentOutOfRangeException(nameof(reliability), reliability, "The standard lists 0.90 and 0.95 to 0.99.");
    }

    /// <summary>
    /// P = X·Fr + Y·Fa, or Fr alone while Fa/Fr is at most e. Never less than Fr: with the table's rounded factors the sum falls short of it just above e, and
    /// thrust would seem to lengthen a life.
    /// </summary>
    /// <param name="radial">Fr.</param>
    /// <param name="axial">Fa.</param>
    /// <param name="e">e of the bearing.</param>
    /// <param name="x">X above e.</param>
    /// <param name="y">Y above e.</param>
    public static double EquivalentLoad(double radial, double axial, double e, double x, double y) =>
        Math.Abs(axial) <= e * Math.Abs(radial) ? Math.Abs(radial) : Math.Max(Math.Abs(radial), (x * Math.Abs(radial)) + (y * Math.Abs(axial)));

    /// <summary>C that gives a life: P·(L/10⁶)^(1/p).</summary>
    /// <param name="equivalentLoad">P.</param>
    /// <param name="revolutions">L.</param>
    /// <param name="element">Balls or rollers.</param>
    public static double RatingFor(double equivalentLoad, double revolutions, RollingElement element) =>
        equivalentLoad * Math.Pow(revolutions / Million, 1 / Exponent(element));

    /// <summary>Hours of a life at a steady speed.</summary>
    /// <param name="revolutions">L.</param>
    /// <param name="revolutionsPerMinute">n; positive.</param>
    public static double Hours(double revolutions, double revolutionsPerMinute)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(revolutionsPerMinute);
        return revolutions / (60 * revolutionsPerMinute);
    }

    private static double Exponent(RollingElement element) => element == RollingElement.Ball ? 3 : 10.0 / 3;
}
