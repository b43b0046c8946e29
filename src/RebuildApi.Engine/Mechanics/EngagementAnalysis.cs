namespace RebuildApi.Engine.Mechanics;

/// <summary>A gear's engagement teeth in a sleeve. Angles are flank to shaft axis in rad, positive back-tapered, negative leaned or worn.</summary>
/// <param name="Torque">T through the sleeve, N·m; its size counts.</param>
/// <param name="EngagementRadius">rc, m; positive.</param>
/// <param name="SplineRadius">rs, of the hub's splines, m; positive.</param>
/// <param name="GearDriveAngle">Drive flanks of the gear.</param>
/// <param name="GearCoastAngle">Coast flanks of the gear.</param>
/// <param name="SleeveDriveAngle">Drive flanks of the sleeve.</param>
/// <param name="SleeveCoastAngle">Coast flanks of the sleeve.</param>
/// <param name="EngagementFriction">μc; <see cref="EngagementFlanks.FrictionUnderVibration"/> to judge holding.</param>
/// <param name="SplineFriction">μs.</param>
public sealed record EngagementInput(
    double Torque,
    double EngagementRadius,
    double SplineRadius,
    double GearDriveAngle,
    double GearCoastAngle,
    double SleeveDriveAngle,
    double SleeveCoastAngle,
    double EngagementFriction,
    double SplineFriction);

/// <summary>What one flank does, new to its mate and bedded in.</summary>
/// <param name="FreshAngle">Angle of the flank that is touched, rad.</param>
/// <param name="Fresh">Its forces.</param>
/// <param name="BeddedAngle">Angle once bedded in, rad: the sleeve's.</param>
/// <param name="Bedded">Its forces.</param>
public sealed record FlankBehaviour(double FreshAngle, FlankForces Fresh, double BeddedAngle, FlankForces Bedded);

/// <summary>A whole engagement.</summary>
/// <param name="Drive">Under drive.</param>
/// <param name="Coast">On the overrun.</param>
/// <param name="HoldingLimit">The most forward taper that friction holds, rad.</param>
/// <param name="SelfFeedingAngle">The least back taper that draws in against friction, rad.</param>
public sealed record EngagementResult(FlankBehaviour Drive, FlankBehaviour Coast, double HoldingLimit, double SelfFeedingAngle);

/// <summary>Both flanks of an engagement, fresh and bedded in, from <see cref="EngagementFlanks"/>.</summary>
public static class EngagementAnalysis
{
    /// <summary>Solves it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="EngagementFlanks.Solve"/>.</exception>
    public static EngagementResult Solve(EngagementInput input)
    {
        var ratio = input.EngagementRadius / input.SplineRadius;
        return new EngagementResult(
            Behaviour(input, input.GearDriveAngle, input.SleeveDriveAngle),
            Behaviour(input, input.GearCoastAngle, input.SleeveCoastAngle),
            EngagementFlanks.HoldingLimit(input.EngagementFriction, input.SplineFriction, ratio),
            EngagementFlanks.SelfFeedingAngle(input.EngagementFriction, input.SplineFriction, ratio));
    }

    private static FlankBehaviour Behaviour(EngagementInput input, double gear, double sleeve)
    {
        var (fresh, bedded) = (EngagementFlanks.FreshAngle(gear, sleeve), EngagementFlanks.BeddedAngle(sleeve));
        return new FlankBehaviour(fresh, Forces(input, fresh), bedded, Forces(input, bedded));
    }

    private static FlankForces Forces(EngagementInput input, double angle) => EngagementFlanks.Solve(new FlankInput(
        input.Torque, input.EngagementRadius, input.SplineRadius, angle, input.EngagementFriction, input.SplineFriction));
}
