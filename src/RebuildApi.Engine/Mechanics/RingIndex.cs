namespace RebuildApi.Engine.Mechanics;

/// <summary>A ring on its keys.</summary>
/// <param name="Teeth">z, teeth of the ring.</param>
/// <param name="SlotMinusKey">Width of the ring's slot less that of the key, m.</param>
/// <param name="KeyRadius">rk, radius at which the keys stand, m; positive.</param>
/// <param name="HubSlotMinusKey">The same play in the hub's slot, m; 0 when the keys sit tight in it.</param>
public sealed record RingIndexInput(int Teeth, double SlotMinusKey, double KeyRadius, double HubSlotMinusKey = 0);

/// <summary>What an index angle does.</summary>
public enum IndexBand
{
    /// <summary>Under 0.17 of a pitch: the sleeve slips by without blocking.</summary>
    SlipsBy,

    /// <summary>Beside what is right: it may run, and is watched.</summary>
    Watched,

    /// <summary>0.20 to 0.33 of a pitch.</summary>
    Right,

    /// <summary>Over 0.40 of a pitch: tooth tip on tooth tip; the shift is blocked out.</summary>
    OverIndexed,
}

/// <summary>How far a ring turns.</summary>
/// <param name="Angle">Index angle to either side, rad.</param>
/// <param name="ShareOfPitch">The same as a share of the tooth pitch.</param>
/// <param name="Band">What it does (bands are common practice, no source).</param>
/// <param name="SlotMinusKeyWanted">Slot less key that gives a quarter of a pitch, m.</param>
public sealed record RingIndexResult(double Angle, double ShareOfPitch, IndexBand Band, double SlotMinusKeyWanted);

/// <summary>
/// How far a ring turns on its keys. The blocked place wants a quarter of a tooth pitch, the sleeve's chamfer in the middle of the ring's.
/// Geometry derived here, no source.
/// </summary>
public static class RingIndex
{
    /// <summary>Solves it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No teeth, a radius that is not positive, or a key wider than its slot.</exception>
    public static RingIndexResult Solve(RingIndexInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(input.SlotMinusKey);
        ArgumentOutOfRangeException.ThrowIfNegative(input.HubSlotMinusKey);
        var share = ShareOfPitch(input.Teeth, input.SlotMinusKey, input.KeyRadius, input.HubSlotMinusKey);
        return new RingIndexResult(
            Angle(input.SlotMinusKey, input.KeyRadius, input.HubSlotMinusKey), share, BandOf(share), SlotMinusKeyFor(input.Teeth, input.KeyRadius));
    }

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
    /// <exception cref="ArgumentOutOfRangeException">The ramp is steeper than friction lets a key be pushed in.</exception>
    public static double Breakthrough(int keys, double springForce, double rampAngle, double friction)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(rampAngle + Math.Atan(friction), Math.PI / 2, nameof(rampAngle));
        return keys * springForce * Math.Tan(rampAngle + Math.Atan(friction));
    }

    private static IndexBand BandOf(double share) => share switch
    {
        < 0.17 => IndexBand.SlipsBy,
        >= 0.20 and <= 0.33 => IndexBand.Right,
        <= 0.40 => IndexBand.Watched,
        _ => IndexBand.OverIndexed,
    };
}
