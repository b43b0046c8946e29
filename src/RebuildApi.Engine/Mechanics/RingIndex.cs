namespace RebuildApi.Engine.Mechanics;

/// <summary>
/// How far a ring turns on its keys. The blocked place wants a quarter of a tooth pitch, the sleeve's chamfer in the middle of the ring's.
/// Geometry derived here, no source.
/// </summary>
public static class RingIndex
{
    /// <summary>Pitch of z teeth, rad: 2π/z.</summary>
    public static double Pitch(int teeth)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(teeth);
        return 2 * Math.PI / teeth;
    }

    /// <summary>Index angle, rad: ψ = (ring slot − key)/2/rk, with the keys' play in the hub added when it is given.</summary>
    /// <param name="slotMinusKey">m.</param>
    /// <param name="keyRadius">rk, m; positive.</param>
    /// <param name="hubSlotMinusKey">m; 0 when the keys sit tight in the hub.</param>
    public static double Angle(double slotMinusKey, double keyRadius, double hubSlotMinusKey = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(keyRadius);
        return (slotMinusKey + hubSlotMinusKey) / 2 / keyRadius;
    }

    /// <summary>Index angle as a share of the pitch. 0.20 to 0.33 is right, to 0.40 watched, beyond or under 0.17 rejected (common practice, no source).</summary>
    public static double ShareOfPitch(int teeth, double slotMinusKey, double keyRadius, double hubSlotMinusKey = 0) =>
        Angle(slotMinusKey, keyRadius, hubSlotMinusKey) / Pitch(teeth);

    /// <summary>Slot less key, m, that gives a quarter of a pitch: 2·rk·p/4.</summary>
    public static double SlotMinusKeyFor(int teeth, double keyRadius) => 2 * keyRadius * Pitch(teeth) / 4;

    /// <summary>Force with which sprung keys press the ring before the sleeve passes, N: n·P·tan(δ + atan μ).</summary>
    /// <param name="keys">n.</param>
    /// <param name="springForce">P on each key, N.</param>
    /// <param name="rampAngle">δ, rad.</param>
    /// <param name="friction">μ.</param>
    public static double Breakthrough(int keys, double springForce, double rampAngle, double friction) =>
        keys * springForce * Math.Tan(rampAngle + Math.Atan(friction));
}
