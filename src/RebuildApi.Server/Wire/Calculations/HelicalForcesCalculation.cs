using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>One helical gear under torque.</summary>
/// <param name="Torque">Torque; its size counts.</param>
/// <param name="PitchRadius">Pitch radius.</param>
/// <param name="HelixAngle">Helix angle; 0 for spur.</param>
/// <param name="NormalPressureAngle">Pressure angle in the normal section.</param>
public sealed record HelicalForcesRequest(
    [Of(Dimension.Torque)] SentQuantity Torque,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity PitchRadius,
    [Of(Dimension.Angle)] SentQuantity HelixAngle,
    [Of(Dimension.Angle)] SentQuantity NormalPressureAngle)
{
    /// <summary>To the engine.</summary>
    public HelicalInput ToEngine() => new(Torque.Si, PitchRadius.Si, HelixAngle.Si, NormalPressureAngle.Si);
}

/// <summary>Sizes of the tooth forces and what they do.</summary>
/// <param name="Tangential">Tangential force.</param>
/// <param name="Radial">Radial force.</param>
/// <param name="Axial">Axial force: the thrust.</param>
/// <param name="Total">All together.</param>
/// <param name="TransversePressureAngle">Pressure angle in the transverse section.</param>
/// <param name="TiltingMoment">Couple that the gear's bearing takes.</param>
public sealed record HelicalForcesWire(
    QuantityWire Tangential, QuantityWire Radial, QuantityWire Axial, QuantityWire Total, QuantityWire TransversePressureAngle, QuantityWire TiltingMoment)
{
    /// <summary>From the engine.</summary>
    public static HelicalForcesWire From(HelicalForceResult r, Display show) => new(
        show.Si(r.Tangential, Dimension.Force),
        show.Si(r.Radial, Dimension.Force),
        show.Si(r.Axial, Dimension.Force),
        show.Si(r.Total, Dimension.Force),
        show.Si(r.TransversePressureAngle, Dimension.Angle),
        show.Si(r.TiltingMoment, Dimension.Torque));
}
