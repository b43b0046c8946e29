using System.Collections.Immutable;

namespace RebuildApi.Engine.Mechanics;

/// <summary>One friction cone.</summary>
/// <param name="Friction">μ.</param>
/// <param name="Radius">R, mean radius, m.</param>
/// <param name="HalfAngle">α, flank to axis, rad; between 0 and a right angle.</param>
public sealed record Cone(double Friction, double Radius, double HalfAngle);

/// <summary>A synchronizer pressed by its sleeve; one to three cones.</summary>
/// <param name="Force">F, of the sleeve on the ring, N.</param>
/// <param name="Cones">The cones in series; each sees the whole force.</param>
/// <param name="ChamferRadius">RI, pitch radius of the ring's chamfers, m.</param>
/// <param name="ChamferAngle">h, chamfer flank to axis (half the pointing angle), rad.</param>
/// <param name="ChamferFriction">μt, on the chamfers.</param>
public sealed record SynchronizerInput(double Force, ImmutableArray<Cone> Cones, double ChamferRadius, double ChamferAngle, double ChamferFriction);

/// <summary>How a synchronizer behaves.</summary>
public enum BlockingBand
{
    /// <summary>Cone torque below index torque: the sleeve passes before the speeds are equal.</summary>
    Clash,

    /// <summary>It blocks, but little wear or another oil makes it clash.</summary>
    Marginal,

    /// <summary>It blocks and lets go.</summary>
    Blocks,

    /// <summary>It blocks far more than it must: a hard shift, or block-out.</summary>
    HardShift,
}

/// <summary>Torques of a synchronizer.</summary>
/// <param name="ConeTorque">Tc = Σ μ·F·R / sin α, N·m.</param>
/// <param name="IndexTorque">TI = F·RI·(cos h − μt·sin h)/(sin h + μt·cos h), N·m.</param>
/// <param name="BlockingRatio">Tc / TI.</param>
/// <param name="Band">Clash below 1, marginal up to 1.1, hard above 1.5 (common practice, no source).</param>
public sealed record SynchronizerTorques(double ConeTorque, double IndexTorque, double BlockingRatio, BlockingBand Band);

/// <summary>
/// Cone torque against the torque with which the sleeve's chamfers turn the ring aside. The framing as clash against hard shift is that of open
/// engineering papers on synchronizers; formulas derived here.
/// </summary>
public static class SynchronizerTorque
{
    private const double Marginal = 1.1;
    private const double Hard = 1.5;

    /// <summary>Both torques and their ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No cone, more than three, or a size that is not positive.</exception>
    public static SynchronizerTorques Solve(SynchronizerInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.Force);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.ChamferRadius);
        if (input.Cones.Length is < 1 or > 3)
            throw new ArgumentOutOfRangeException(nameof(input), input.Cones.Length, "A synchronizer has one to three cones.");
        var cone = input.Cones.Sum(c => ConeTorque(input.Force, c));
        var index = IndexTorque(input.Force, input.ChamferRadius, input.ChamferAngle, input.ChamferFriction);
        return new SynchronizerTorques(cone, index, cone / index, BandOf(cone / index));
    }

    /// <summary>Tc = μ·F·R / sin α, N·m.</summary>
    public static double ConeTorque(double force, Cone cone)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(cone.HalfAngle);
        return cone.Friction * force * cone.Radius / Math.Sin(cone.HalfAngle);
    }

    /// <summary>TI = F·RI·tan(90° − h − ρt), N·m, ρt = atan μt.</summary>
    public static double IndexTorque(double force, double chamferRadius, double chamferAngle, double chamferFriction) =>
        force * chamferRadius * Math.Tan((Math.PI / 2) - chamferAngle - Math.Atan(chamferFriction));

    /// <summary>Least chamfer angle h, rad, at which one cone still blocks: 90° − ρt − atan(μ·R/(RI·sin α)).</summary>
    public static double LeastChamferAngle(Cone cone, double chamferRadius, double chamferFriction) =>
        (Math.PI / 2) - Math.Atan(chamferFriction) - Math.Atan(cone.Friction * cone.Radius / (chamferRadius * Math.Sin(cone.HalfAngle)));

    private static BlockingBand BandOf(double ratio) => ratio switch
    {
        < 1 => BlockingBand.Clash,
        < Marginal => BlockingBand.Marginal,
        <= Hard => BlockingBand.Blocks,
        _ => BlockingBand.HardShift,
    };
}
