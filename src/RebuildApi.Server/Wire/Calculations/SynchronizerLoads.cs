using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>One shift.</summary>
/// <param name="Inertia">What the cone brings to speed, kg·m².</param>
/// <param name="RevolutionsPerMinute">Difference of speed.</param>
/// <param name="ConeAreaSquareMillimetres">Area of the cones together, mm².</param>
/// <param name="Upshift">Whether it is an upshift: drag then helps.</param>
/// <param name="Drag">Drag torque.</param>
/// <param name="Ring">The ring that takes up a share of the heat.</param>
public sealed record ShiftRequest(
    [Between(0.000001, 1000)] decimal Inertia,
    [Between(0, 1e5)] decimal RevolutionsPerMinute,
    [Between(0.01, 1e6)] decimal ConeAreaSquareMillimetres,
    bool Upshift = true,
    [Of(Dimension.Torque, Sign = SignRule.NotNegative)] SentQuantity? Drag = null,
    RingHeatRequest? Ring = null)
{
    /// <summary>To the engine.</summary>
    public SynchronizingInput ToEngine(double coneTorque, double radius) => new(
        (double)Inertia, (double)RevolutionsPerMinute * 2 * Math.PI / 60, coneTorque, Drag?.Si ?? 0, Upshift, (double)ConeAreaSquareMillimetres * 1e-6, radius);
}

/// <summary>A ring that takes up a share of the heat of a shift.</summary>
/// <param name="Mass">Its mass.</param>
/// <param name="SpecificHeat">Its specific heat, J/(kg·K); brass has about 385 (engineering tables).</param>
/// <param name="Share">Share of the heat that goes into it; a half when not said (judgement).</param>
public sealed record RingHeatRequest(
    [Of(Dimension.Mass, Sign = SignRule.Positive)] SentQuantity Mass, [Between(1, 10000)] decimal SpecificHeat = 385m, [Between(0, 1)] decimal Share = 0.5m);

/// <summary>Time and heat of a shift, for comparison, not a rating.</summary>
/// <param name="Time">Time; absent when drag is not overcome.</param>
/// <param name="Energy">Energy turned to heat.</param>
/// <param name="EnergyPerArea">Per area of the cones.</param>
/// <param name="PeakPowerPerArea">Peak power per area.</param>
/// <param name="SlidingSpeed">Sliding speed at the beginning.</param>
/// <param name="MeanPower">Mean power; 0 when drag is not overcome.</param>
/// <param name="MeanPowerPerArea">Mean power per area.</param>
/// <param name="RingWarmsBy">How much one shift warms the ring, where it was sent.</param>
public sealed record ShiftWire(
    QuantityWire? Time,
    QuantityWire Energy,
    QuantityWire EnergyPerArea,
    QuantityWire PeakPowerPerArea,
    QuantityWire SlidingSpeed,
    QuantityWire MeanPower,
    QuantityWire MeanPowerPerArea,
    QuantityWire? RingWarmsBy)
{
    /// <summary>From the engine.</summary>
    public static ShiftWire From(SynchronizingResult r, RingHeatRequest? ring) => new(
        double.IsFinite(r.Time) ? Display.In(r.Time, "s") : null,
        Display.In(r.Energy, "J"),
        Display.In(r.EnergyPerArea * 1e-6, "J/mm²"),
        Display.In(r.PeakPowerPerArea * 1e-6, "W/mm²"),
        Display.In(r.SlidingSpeed, "m/s"),
        Display.In(r.MeanPower, "W"),
        Display.In(r.MeanPowerPerArea * 1e-6, "W/mm²"),
        ring is { } warmed
            ? Display.In(SynchronizingHeat.RingTemperatureRise(r.Energy, (double)warmed.Share, warmed.Mass.Si, (double)warmed.SpecificHeat), "K")
            : null);
}

/// <summary>The gap between ring and gear, ring pressed on by hand.</summary>
/// <param name="Now">The gap now.</param>
/// <param name="Limit">The least gap.</param>
/// <param name="New">The gap when new.</param>
/// <param name="LifeSoFar">What the ring has run, in any unit.</param>
public sealed record ReserveRequest(
    [Of(Dimension.Length)] SentQuantity Now,
    [Of(Dimension.Length)] SentQuantity Limit,
    [Of(Dimension.Length)] SentQuantity? New = null,
    [Between(0, 1e9)] decimal? LifeSoFar = null);

/// <summary>What wear does to the gap.</summary>
/// <param name="Left">Gap left above the limit; negative below it.</param>
/// <param name="RadialBudget">Radial wear of ring and cone together that uses it up.</param>
/// <param name="RemainingLife">Life left in the unit of the life so far, wear going on as before (judgement); absent when nothing has worn or it is not known.</param>
public sealed record ReserveWire(QuantityWire Left, QuantityWire RadialBudget, double? RemainingLife)
{
    /// <summary>From the engine.</summary>
    public static ReserveWire From(ReserveRequest sent, double halfAngle, Display show) => new(
        show.Length(sent.Now.Length - sent.Limit.Length),
        show.Metres(ReserveGap.RadialBudget(sent.Now.Si - sent.Limit.Si, halfAngle)),
        sent.New is { } whenNew && sent.LifeSoFar is { } life ? Numbers.Finite(ReserveGap.RemainingLife(whenNew.Si, sent.Now.Si, sent.Limit.Si, (double)life)) : null);
}
