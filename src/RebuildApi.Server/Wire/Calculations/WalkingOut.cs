using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Radial play of a part over the length that guides it.</summary>
/// <param name="Play">Radial play.</param>
/// <param name="Length">Length of the bearing, or width of the hub.</param>
public sealed record RadialPlayRequest(
    [Of(Dimension.Length, Sign = SignRule.NotNegative)] SentQuantity Play, [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Length)
{
    /// <summary>By the engine.</summary>
    internal RockingWire Rock(double radius, Display show)
    {
        var tilt = Engine.Mechanics.WalkOut.Tilt(Play.Si, Length.Si);
        return new(show.Si(tilt, Dimension.Angle), show.Metres(Engine.Mechanics.WalkOut.AxialSwing(radius, tilt)));
    }
}

/// <summary>How far a part rocks in its play.</summary>
/// <param name="Tilt">How far it tips.</param>
/// <param name="Swing">How far its teeth go to and fro along the shaft in one turn.</param>
public sealed record RockingWire(QuantityWire Tilt, QuantityWire Swing);

/// <summary>Rocking of gear and sleeve, the usual cause of walking out of gear.</summary>
/// <param name="Gear">The gear on its bearing, where its play was sent.</param>
/// <param name="Sleeve">The sleeve on its hub, where its play was sent.</param>
public sealed record WalkOutWire(RockingWire? Gear, RockingWire? Sleeve)
{
    /// <summary>By the engine; none when no play was sent.</summary>
    internal static WalkOutWire? Of(RadialPlayRequest? gear, RadialPlayRequest? sleeve, double radius, Display show) =>
        gear is null && sleeve is null ? null : new(gear?.Rock(radius, show), sleeve?.Rock(radius, show));
}

/// <summary>A sprung ball in a notch of the rail.</summary>
/// <param name="SpringForce">Force of the spring.</param>
/// <param name="NotchAngle">Slope of the notch to the rail.</param>
/// <param name="Friction">Friction on it.</param>
public sealed record DetentRequest(
    [Of(Dimension.Force, Sign = SignRule.Positive)] SentQuantity SpringForce,
    [Of(Dimension.Angle, Sign = SignRule.Positive)] SentQuantity NotchAngle,
    [Between(0, 2)] decimal Friction = 0.1m);

/// <summary>What a detent holds against what pushes the sleeve out.</summary>
/// <param name="Force">Axial force that it holds.</param>
/// <param name="Expulsion">The most that pushes the sleeve out by itself: drive or coast, fresh or bedded in.</param>
/// <param name="Holds">Whether it holds that.</param>
public sealed record DetentWire(QuantityWire Force, QuantityWire Expulsion, bool Holds)
{
    /// <summary>By the engine.</summary>
    internal static DetentWire Of(DetentRequest sent, EngagementResult r, Display show)
    {
        var force = Engine.Mechanics.WalkOut.DetentForce(sent.SpringForce.Si, sent.NotchAngle.Si, (double)sent.Friction);
        var most = new[] { r.Drive.Fresh, r.Drive.Bedded, r.Coast.Fresh, r.Coast.Bedded }.Max(f => f.Expulsion);
        return new(show.Si(force, Dimension.Force), show.Si(most, Dimension.Force), force >= most);
    }
}
