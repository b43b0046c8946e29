namespace RebuildApi.Engine.Mechanics;

/// <summary>
/// Rocking from radial play, the usual cause of walking out of gear: each turn the gear tips through its play and ratchets a straight or worn
/// sleeve outward. So radial play of gear, pilot and hub splines is an input to jumping out, not only to noise. Derived here, no source.
/// </summary>
public static class WalkOut
{
    /// <summary>γ = c / Lb, rad: how far a gear tips on its bearing.</summary>
    /// <param name="radialPlay">c, m.</param>
    /// <param name="bearingLength">Lb, m; positive.</param>
    public static double Tilt(double radialPlay, double bearingLength)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bearingLength);
        return radialPlay / bearingLength;
    }

    /// <summary>2·r·γ, m: how far the teeth at a radius go to and fro along the shaft in one turn.</summary>
    /// <param name="radius">r, m.</param>
    /// <param name="tilt">γ, rad.</param>
    public static double AxialSwing(double radius, double tilt) => 2 * radius * tilt;

    /// <summary>Axial force of a sprung ball in a notch against being pushed over: P·tan(δ + atan μ), N.</summary>
    /// <param name="springForce">P, N.</param>
    /// <param name="notchAngle">δ, slope of the notch to the rail, rad.</param>
    /// <param name="friction">μ.</param>
    /// <exception cref="ArgumentOutOfRangeException">The notch is steeper than friction lets the ball be pushed out of.</exception>
    public static double DetentForce(double springForce, double notchAngle, double friction)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(notchAngle + Math.Atan(friction), Math.PI / 2, nameof(notchAngle));
        return springForce * Math.Tan(notchAngle + Math.Atan(friction));
    }
}
