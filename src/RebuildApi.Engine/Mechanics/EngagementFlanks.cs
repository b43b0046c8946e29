namespace RebuildApi.Engine.Mechanics;

/// <summary>One flank of the engagement teeth under torque.</summary>
/// <param name="Torque">T, torque through the sleeve, N·m; its size counts.</param>
/// <param name="EngagementRadius">rc, mean radius of the engagement teeth, m; positive.</param>
/// <param name="SplineRadius">rs, mean radius of the hub's splines, m; positive.</param>
/// <param name="FlankAngle">θ, angle of the flank that is touched to the shaft axis, rad; positive back taper (pulls deeper), negative forward taper from wear.</param>
/// <param name="EngagementFriction">μc, friction at the engagement teeth; not negative.</param>
/// <param name="SplineFriction">μs, friction at the hub's splines; 0 looks at the engagement teeth alone.</param>
public sealed record FlankInput(
    double Torque,
    double EngagementRadius,
    double SplineRadius,
    double FlankAngle,
    double EngagementFriction,
    double SplineFriction);

/// <summary>What one flank does to the sleeve. Forces are along the shaft, in newtons.</summary>
/// <param name="EngagementForce">Fc = |T| / rc, tangential.</param>
/// <param name="SplineForce">Fs = |T| / rs, tangential.</param>
/// <param name="FlankForce">Fa = Fc·tan θ without friction; positive pulls the sleeve in.</param>
/// <param name="PullOut">Fc·tan(θ + ρc) + μs·Fs with ρc = atan μc: the force that pulls the sleeve out under torque; negative: it goes by itself.</param>
/// <param name="DrawIn">Fc·tan(θ − ρc) − μs·Fs: the force left to draw the sleeve in against friction; negative: it is not drawn in.</param>
public sealed record FlankForces(double EngagementForce, double SplineForce, double FlankForce, double PullOut, double DrawIn)
{
    /// <summary>The force that pushes the sleeve out of gear by itself, N; 0 when it stays.</summary>
    public double Expulsion => Math.Max(0, -PullOut);

    /// <summary>Whether friction and taper hold the sleeve.</summary>
    public bool Holds => PullOut >= 0;

    /// <summary>Whether the sleeve is drawn in against friction at both interfaces.</summary>
    public bool DrawsIn => DrawIn > 0;
}

/// <summary>
/// Forces of straight, back-tapered and leaned-over engagement flanks: a wedge with friction at the engagement teeth and a slide with friction
/// on the hub's splines. Derived here from equilibrium; the condition for drawing in has the shape published in the abstract of WO 2007/055624.
/// </summary>
/// <remarks>
/// Friction is no safe reserve: torsional vibration, torque reversal and rocking relieve it. Judge holding with 0.02 to 0.05; use 0.1 only for
/// the effort of shifting out (common practice, no source).
/// </remarks>
public static class EngagementFlanks
{
    /// <summary>Friction that is left when vibration relieves it, for verdicts (common practice, no source).</summary>
    public const double FrictionUnderVibration = 0.05;

    /// <summary>Forces of one flank.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A radius is not positive, friction is negative, or the flank is steeper than friction allows to compute.</exception>
    public static FlankForces Solve(FlankInput input)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.EngagementRadius);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(input.SplineRadius);
        ArgumentOutOfRangeException.ThrowIfNegative(input.EngagementFriction);
        ArgumentOutOfRangeException.ThrowIfNegative(input.SplineFriction);
        var rho = Math.Atan(input.EngagementFriction);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Math.Abs(input.FlankAngle) + rho, Math.PI / 2, nameof(input.FlankAngle));
        var engagement = Math.Abs(input.Torque) / input.EngagementRadius;
        var spline = Math.Abs(input.Torque) / input.SplineRadius;
        return new FlankForces(
            engagement,
            spline,
            engagement * Math.Tan(input.FlankAngle),
            (engagement * Math.Tan(input.FlankAngle + rho)) + (input.SplineFriction * spline),
            (engagement * Math.Tan(input.FlankAngle - rho)) - (input.SplineFriction * spline));
    }

    /// <summary>The angle that acts while the parts are new to each other: that of the flank that is touched.</summary>
    /// <param name="gearAngle">Flank angle of the gear, rad.</param>
    /// <param name="sleeveAngle">Flank angle of the sleeve, rad.</param>
    /// <returns>
    /// The smaller of the two: the edge of the part with more back taper touches the flank of the other. A rigid back-tapered sleeve on
    /// straight teeth touches straight flanks, and draws nothing in.
    /// </returns>
    public static double FreshAngle(double gearAngle, double sleeveAngle) => Math.Min(gearAngle, sleeveAngle);

    /// <summary>The angle that acts once the gear's flanks have bedded to the sleeve's: the sleeve's own.</summary>
    public static double BeddedAngle(double sleeveAngle) => sleeveAngle;

    /// <summary>The flank that carries a torque: drive flanks for positive torque, coast flanks for negative.</summary>
    public static double AngleUnder(double torque, double driveAngle, double coastAngle) => torque >= 0 ? driveAngle : coastAngle;

    /// <summary>The most forward taper, rad, that friction holds: ρc + atan(μs·rc/rs); with μs = 0 the engagement teeth alone, atan μc.</summary>
    public static double HoldingLimit(double engagementFriction, double splineFriction, double radiusRatio) =>
        Math.Atan(engagementFriction) + Math.Atan(splineFriction * radiusRatio);

    /// <summary>The least back taper, rad, that draws in against friction at both interfaces: tan θ = μc + μs·rc/rs (shape of WO 2007/055624).</summary>
    /// <param name="engagementFriction">μc.</param>
    /// <param name="splineFriction">μs.</param>
    /// <param name="radiusRatio">rc/rs.</param>
    public static double SelfFeedingAngle(double engagementFriction, double splineFriction, double radiusRatio) =>
        Math.Atan(engagementFriction + (splineFriction * radiusRatio));
}
