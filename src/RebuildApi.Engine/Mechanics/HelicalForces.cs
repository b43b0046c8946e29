namespace RebuildApi.Engine.Mechanics;

/// <summary>One helical gear under torque.</summary>
/// <param name="Torque">T, N·m; its size counts.</param>
/// <param name="PitchRadius">rp, m; positive.</param>
/// <param name="HelixAngle">β, rad, 0 for spur; its size counts.</param>
/// <param name="NormalPressureAngle">αn, rad.</param>
public sealed record HelicalInput(double Torque, double PitchRadius, double HelixAngle, double NormalPressureAngle);

/// <summary>Sizes of the tooth forces, N, and what they do.</summary>
/// <param name="Tangential">Ft = T / rp.</param>
/// <param name="Radial">Fr = Ft·tan αn / cos β.</param>
/// <param name="Axial">Fx = Ft·tan β.</param>
/// <param name="Total">W = Ft / (cos αn·cos β).</param>
/// <param name="TransversePressureAngle">αt = atan(tan αn / cos β), rad.</param>
/// <param name="TiltingMoment">Fx·rp, N·m, taken as a couple by the gear's bearing.</param>
public sealed record HelicalForceResult(
    double Tangential, double Radial, double Axial, double Total, double TransversePressureAngle, double TiltingMoment);

/// <summary>Tooth forces of helical gears (Mechanical Engineering Design, Shigley, helical gear force analysis).</summary>
public static class HelicalForces
{
    /// <summary>The forces.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not positive, or an angle is not below a right angle.</exception>
    public static HelicalForceResult Solve(HelicalInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.PitchRadius);
        var helix = Math.Abs(input.HelixAngle);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(helix, Math.PI / 2, nameof(input.HelixAngle));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Math.Abs(input.NormalPressureAngle), Math.PI / 2, nameof(input.NormalPressureAngle));
        var tangential = Math.Abs(input.Torque) / input.PitchRadius;
        var transverse = Math.Atan(Math.Tan(input.NormalPressureAngle) / Math.Cos(helix));
        var axial = tangential * Math.Tan(helix);
        return new HelicalForceResult(
            tangential,
            tangential * Math.Tan(transverse),
            axial,
            tangential / (Math.Cos(input.NormalPressureAngle) * Math.Cos(helix)),
            transverse,
            axial * input.PitchRadius);
    }

    /// <summary>Torque, N·m, of a power at a speed: T = P / ω.</summary>
    /// <param name="power">W.</param>
    /// <param name="speed">rad/s; positive.</param>
    public static double Torque(double power, double speed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        return power / speed;
    }
}
