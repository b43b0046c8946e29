using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A gear's engagement teeth in a sleeve. Angles are flank to shaft axis, positive back-tapered, negative leaned or worn.</summary>
/// <param name="Torque">Torque through the sleeve; its size counts.</param>
/// <param name="EngagementRadius">Mean radius of the engagement teeth.</param>
/// <param name="SplineRadius">Mean radius of the hub's splines.</param>
/// <param name="GearDriveAngle">Drive flanks of the gear.</param>
/// <param name="SleeveDriveAngle">Drive flanks of the sleeve.</param>
/// <param name="GearCoastAngle">Coast flanks of the gear; as the drive flanks when not said.</param>
/// <param name="SleeveCoastAngle">Coast flanks of the sleeve; as the drive flanks when not said.</param>
/// <param name="EngagementFriction">Friction at the engagement teeth; what vibration leaves of it when not said.</param>
/// <param name="SplineFriction">Friction at the hub's splines; what vibration leaves of it when not said.</param>
/// <param name="Teeth">The teeth, for their stresses.</param>
/// <param name="Travel">How far the sleeve goes and what stops it, for the fork's load.</param>
/// <param name="GearPlay">Radial play of the gear on its bearing, for how far it rocks.</param>
/// <param name="SleevePlay">Radial play of the sleeve on its hub, for how far it rocks.</param>
/// <param name="Detent">The sprung ball that is to hold the sleeve.</param>
public sealed record EngagementRequest(
    [Of(Dimension.Torque)] SentQuantity Torque,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity EngagementRadius,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity SplineRadius,
    [Of(Dimension.Angle)] SentQuantity GearDriveAngle,
    [Of(Dimension.Angle)] SentQuantity SleeveDriveAngle,
    [Of(Dimension.Angle)] SentQuantity? GearCoastAngle = null,
    [Of(Dimension.Angle)] SentQuantity? SleeveCoastAngle = null,
    [Between(0, 2)] decimal EngagementFriction = 0.05m,
    [Between(0, 2)] decimal SplineFriction = 0.05m,
    EngagementTeethRequest? Teeth = null,
    SleeveTravelRequest? Travel = null,
    RadialPlayRequest? GearPlay = null,
    RadialPlayRequest? SleevePlay = null,
    DetentRequest? Detent = null)
{
    /// <summary>The same with the coast flanks filled in.</summary>
    public EngagementRequest Completed() => this with { GearCoastAngle = GearCoastAngle ?? GearDriveAngle, SleeveCoastAngle = SleeveCoastAngle ?? SleeveDriveAngle };

    /// <summary>To the engine.</summary>
    public EngagementInput ToEngine() => new(
        Torque.Si,
        EngagementRadius.Si,
        SplineRadius.Si,
        GearDriveAngle.Si,
        (GearCoastAngle ?? GearDriveAngle).Si,
        SleeveDriveAngle.Si,
        (SleeveCoastAngle ?? SleeveDriveAngle).Si,
        (double)EngagementFriction,
        (double)SplineFriction);
}

/// <summary>A whole engagement.</summary>
/// <param name="Drive">Under drive.</param>
/// <param name="Coast">On the overrun.</param>
/// <param name="HoldingLimit">The most forward taper that friction holds.</param>
/// <param name="SelfFeedingAngle">The least back taper that draws in against friction.</param>
/// <param name="Stress">Mean stresses of the teeth, where they were sent.</param>
/// <param name="Fork">Over-travel and the load of the fork's pads, where the travel was sent.</param>
/// <param name="WalkOut">How far the teeth rock in and out in each turn, where a play was sent: it ratchets a straight or worn sleeve outward.</param>
/// <param name="Detent">Whether the detent alone holds the sleeve, where it was sent.</param>
public sealed record EngagementWire(
    FlankBehaviourWire Drive,
    FlankBehaviourWire Coast,
    QuantityWire HoldingLimit,
    QuantityWire SelfFeedingAngle,
    EngagementStressWire? Stress,
    ForkLoadWire? Fork,
    WalkOutWire? WalkOut,
    DetentWire? Detent)
{
    /// <summary>From the engine.</summary>
    public static EngagementWire From(EngagementResult r, EngagementRequest sent, Display show) => new(
        FlankBehaviourWire.From(r.Drive, show),
        FlankBehaviourWire.From(r.Coast, show),
        show.Si(r.HoldingLimit, Dimension.Angle),
        show.Si(r.SelfFeedingAngle, Dimension.Angle),
        sent.Teeth is { } teeth ? EngagementStressWire.From(EngagementStress.Solve(teeth.ToEngine(r.Drive.Bedded.EngagementForce))) : null,
        sent.Travel is { } travel ? ForkLoadWire.From(SleeveTravel.Solve(travel.ToEngine(r.Drive.Bedded)), show) : null,
        WalkOutWire.Of(sent.GearPlay, sent.SleevePlay, sent.EngagementRadius.Si, show),
        sent.Detent is { } detent ? DetentWire.Of(detent, r, show) : null);
}

/// <summary>What one flank does, new to its mate and bedded in.</summary>
/// <param name="Fresh">New to its mate: the angle of the flank that is touched acts.</param>
/// <param name="Bedded">Bedded in: the sleeve's angle acts.</param>
public sealed record FlankBehaviourWire(FlankForcesWire Fresh, FlankForcesWire Bedded)
{
    /// <summary>From the engine.</summary>
    public static FlankBehaviourWire From(FlankBehaviour b, Display show) =>
        new(FlankForcesWire.From(b.FreshAngle, b.Fresh, show), FlankForcesWire.From(b.BeddedAngle, b.Bedded, show));
}

/// <summary>What one flank does to the sleeve; forces along the shaft but for the first.</summary>
/// <param name="Angle">The angle that acts.</param>
/// <param name="EngagementForce">Tangential force at the engagement teeth.</param>
/// <param name="FlankForce">Without friction; positive pulls the sleeve in.</param>
/// <param name="PullOut">What it takes to pull the sleeve out under torque; negative: it goes by itself.</param>
/// <param name="DrawIn">What is left to draw the sleeve in against friction; negative: it is not drawn in.</param>
/// <param name="Expulsion">What pushes the sleeve out by itself; 0 when it stays.</param>
/// <param name="Holds">Whether friction and taper hold the sleeve.</param>
/// <param name="DrawsIn">Whether the sleeve is drawn in.</param>
public sealed record FlankForcesWire(
    QuantityWire Angle, QuantityWire EngagementForce, QuantityWire FlankForce, QuantityWire PullOut, QuantityWire DrawIn, QuantityWire Expulsion, bool Holds, bool DrawsIn)
{
    /// <summary>From the engine.</summary>
    public static FlankForcesWire From(double angle, FlankForces f, Display show) => new(
        show.Si(angle, Dimension.Angle),
        show.Si(f.EngagementForce, Dimension.Force),
        show.Si(f.FlankForce, Dimension.Force),
        show.Si(f.PullOut, Dimension.Force),
        show.Si(f.DrawIn, Dimension.Force),
        show.Si(f.Expulsion, Dimension.Force),
        f.Holds,
        f.DrawsIn);
}
