using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>The small engagement teeth and how many of them carry.</summary>
/// <param name="Count">Engagement teeth of the gear; 36 is a common count.</param>
/// <param name="ContactHeight">Radial height in contact.</param>
/// <param name="EngagedLength">Length engaged along the shaft.</param>
/// <param name="RootThickness">Thickness at the root.</param>
/// <param name="Share">Share of the teeth that carries: after wear a half, rocking a third (common practice, no source).</param>
public sealed record EngagementTeethRequest(
    [Between(1, 1000)] int Count,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity ContactHeight,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity EngagedLength,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity RootThickness,
    [Between(0.01, 1)] decimal Share = 0.5m)
{
    /// <summary>To the engine.</summary>
    public EngagementStressInput ToEngine(double force) => new(force, Count, (double)Share, ContactHeight.Si, EngagedLength.Si, RootThickness.Si);
}

/// <summary>Mean stresses; shock multiplies by 2 to 3 (common practice, no source).</summary>
/// <param name="Contact">Contact stress.</param>
/// <param name="Shear">Shear stress at the root.</param>
public sealed record EngagementStressWire(QuantityWire Contact, QuantityWire Shear)
{
    /// <summary>From the engine.</summary>
    public static EngagementStressWire From(EngagementStresses s) => new(Display.In(s.Contact * 1e-6, "MPa"), Display.In(s.Shear * 1e-6, "MPa"));
}

/// <summary>How far a sleeve goes, and what stops it.</summary>
/// <param name="Travel">How far it can go from neutral.</param>
/// <param name="Needed">Travel at which the teeth are in to full depth.</param>
/// <param name="Stopped">Whether a stop takes the thrust.</param>
/// <param name="PadAreaSquareMillimetres">Area of the fork's pads together, mm².</param>
/// <param name="PadRadius">Mean radius of the groove.</param>
/// <param name="RevolutionsPerMinute">Speed of the sleeve.</param>
/// <param name="ToBottom">Travel at which it runs against gear or ring.</param>
public sealed record SleeveTravelRequest(
    [Of(Dimension.Length)] SentQuantity Travel,
    [Of(Dimension.Length)] SentQuantity Needed,
    bool Stopped,
    [Between(0.01, 1e6)] decimal PadAreaSquareMillimetres,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity PadRadius,
    [Between(0, 1e5)] decimal RevolutionsPerMinute,
    [Of(Dimension.Length)] SentQuantity? ToBottom = null)
{
    /// <summary>To the engine: what draws the sleeve in under drive, once bedded in, is what the fork or the stop holds.</summary>
    public SleeveTravelInput ToEngine(FlankForces flanks) => new(
        Travel.Si, Needed.Si, ToBottom?.Si, Stopped, Math.Max(0, flanks.DrawIn), (double)PadAreaSquareMillimetres * 1e-6, PadRadius.Si,
        (double)RevolutionsPerMinute * 2 * Math.PI / 60);
}

/// <summary>Where a sleeve ends and what its fork carries.</summary>
/// <param name="OverTravel">Travel beyond full depth; negative: the teeth are not fully in.</param>
/// <param name="LeftToBottom">Travel left before it bottoms.</param>
/// <param name="ForkLoad">Load of the fork's pads; 0 with a stop.</param>
/// <param name="PadPressure">Pressure of the pads.</param>
/// <param name="PressureVelocity">Pressure times rubbing speed; bronze carries about 2 for long (from memory, common practice).</param>
public sealed record ForkLoadWire(QuantityWire OverTravel, QuantityWire? LeftToBottom, QuantityWire ForkLoad, QuantityWire PadPressure, QuantityWire PressureVelocity)
{
    /// <summary>From the engine.</summary>
    public static ForkLoadWire From(SleeveTravelResult r, Display show) => new(
        show.Metres(r.OverTravel),
        r.ToBottom is { } left ? show.Metres(left) : null,
        show.Si(r.ForkLoad, Dimension.Force),
        Display.In(r.PadPressure * 1e-6, "MPa"),
        Display.In(r.PressureVelocity * 1e-6, "MPa·m/s"));
}
