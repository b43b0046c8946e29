namespace RebuildApi.Engine.Mechanics;

/// <summary>Centre distances of a pair of external helical gears (involute geometry, ISO 21771).</summary>
public static class MeshGeometry
{
    /// <summary>Reference centre distance, m: a = mn·(z1 + z2) / (2·cos β).</summary>
    /// <param name="normalModule">mn, m.</param>
    /// <param name="teeth">z1 + z2.</param>
    /// <param name="helixAngle">β, rad.</param>
    public static double ReferenceCentreDistance(double normalModule, int teeth, double helixAngle) =>
        normalModule * teeth / (2 * Math.Cos(helixAngle));

    /// <summary>
    /// Centre distance without backlash, m: aw = a·cos αt / cos αwt with inv αwt = inv αt + 2·tan αn·(x1 + x2)/(z1 + z2), tan αt = tan αn / cos β.
    /// </summary>
    /// <param name="normalModule">mn, m.</param>
    /// <param name="teeth">z1 + z2.</param>
    /// <param name="helixAngle">β, rad.</param>
    /// <param name="normalPressureAngle">αn, rad.</param>
    /// <param name="profileShift">x1 + x2.</param>
    /// <returns>The distance; null when so negative a shift leaves none.</returns>
    public static double? WorkingCentreDistance(double normalModule, int teeth, double helixAngle, double normalPressureAngle, double profileShift)
    {
        var transverse = Math.Atan(Math.Tan(normalPressureAngle) / Math.Cos(helixAngle));
        var involute = Involute(transverse) + (2 * Math.Tan(normalPressureAngle) * profileShift / teeth);
        return involute < 0
            ? null
            : ReferenceCentreDistance(normalModule, teeth, helixAngle) * Math.Cos(transverse) / Math.Cos(InverseInvolute(involute));
    }

    /// <summary>Change of tangential backlash, m, for a change of centre distance: 2·Δa·tan αwt.</summary>
    public static double BacklashChange(double centreDistanceChange, double workingPressureAngle) =>
        2 * centreDistanceChange * Math.Tan(workingPressureAngle);

    /// <summary>inv α = tan α − α.</summary>
    public static double Involute(double angle) => Math.Tan(angle) - angle;

    /// <summary>The angle, rad, with a given involute; Newton's method from the cube-root start, good to rounding.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The involute is negative: the teeth cannot run at any distance.</exception>
    public static double InverseInvolute(double involute)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(involute);
        var angle = Math.Min(1.4, Math.Cbrt(3 * involute));
        for (var i = 0; i < 50 && involute > 0; i++)
        {
            var step = (Involute(angle) - involute) / (Math.Tan(angle) * Math.Tan(angle));
            angle -= step;
            if (Math.Abs(step) < 1e-15)
                break;
        }

        return angle;
    }
}
