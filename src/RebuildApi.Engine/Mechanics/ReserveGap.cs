namespace RebuildApi.Engine.Mechanics;

/// <summary>How wear of ring and cone eats the reserve gap. Geometry derived here, no source; lengths in metres.</summary>
public static class ReserveGap
{
    /// <summary>How far the ring advances for a radial wear of ring and cone together: δr / tan α.</summary>
    /// <param name="radialWear">δr, m.</param>
    /// <param name="halfAngle">α, rad; positive.</param>
    public static double Advance(double radialWear, double halfAngle)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(halfAngle);
        return radialWear / Math.Tan(halfAngle);
    }

    /// <summary>Radial wear that uses up a loss of gap: Δa·tan α.</summary>
    public static double RadialBudget(double gapLoss, double halfAngle) => gapLoss * Math.Tan(halfAngle);

    /// <summary>
    /// Life left in the unit of the life so far, wear going on as before (judgement): (now − limit)/(new − now)·life. Infinite when nothing has
    /// worn, 0 at or below the limit.
    /// </summary>
    public static double RemainingLife(double gapNew, double gapNow, double gapLimit, double lifeSoFar)
    {
        if (gapNow <= gapLimit)
            return 0;
        return gapNow >= gapNew ? double.PositiveInfinity : (gapNow - gapLimit) / (gapNew - gapNow) * lifeSoFar;
    }
}
