using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Rating life of a rolling bearing.</summary>
/// <param name="DynamicRating">Basic dynamic load rating C.</param>
/// <param name="Radial">Radial load.</param>
/// <param name="Element">Balls or rollers.</param>
/// <param name="Axial">Axial load.</param>
/// <param name="E">e of the bearing. With an axial load e, X and Y are needed, or what they follow from: type deep-groove with its static rating, type tapered with its e.</param>
/// <param name="X">X above e; from the tables when not said.</param>
/// <param name="Y">Y above e; from the tables when not said.</param>
/// <param name="RevolutionsPerMinute">Steady speed, for hours.</param>
/// <param name="Reliability">0.90, 0.95, 0.96, 0.97, 0.98 or 0.99.</param>
/// <param name="Condition">Factor for lubrication and cleanliness; 1 when it is not known.</param>
/// <param name="Type">Type of bearing, for its load factors and whether it takes the thrust.</param>
/// <param name="StaticRating">Basic static load rating C0.</param>
/// <param name="F0">Factor f0 of a deep-groove bearing.</param>
/// <param name="Clearance">Its internal clearance as made, and what fit and warmth take of it.</param>
public sealed record BearingLifeRequest(
    [Of(Dimension.Force, Sign = SignRule.Positive)] SentQuantity DynamicRating,
    [Of(Dimension.Force)] SentQuantity Radial,
    [OneOf("ball", "roller")] string Element,
    [Of(Dimension.Force)] SentQuantity? Axial = null,
    [Between(0, 10)] decimal? E = null,
    [Between(0, 10)] decimal? X = null,
    [Between(0, 10)] decimal? Y = null,
    [Between(0.001, 1000000)] decimal? RevolutionsPerMinute = null,
    [Between(0.5, 0.9999)] decimal Reliability = 0.90m,
    [Between(0.0001, 100)] decimal Condition = 1m,
    [OneOf("deep-groove", "filling-slot", "angular-contact", "tapered", "cylindrical", "needle")] string? Type = null,
    [Of(Dimension.Force, Sign = SignRule.Positive)] SentQuantity? StaticRating = null,
    [Between(1, 20)] decimal F0 = 12.3m,
    BearingClearanceRequest? Clearance = null)
{
    /// <summary>To the engine.</summary>
    internal RollingElement Kind => Element == "ball" ? RollingElement.Ball : RollingElement.Roller;

    /// <summary>The load factors: those sent, else those of the type; null when they can't be known.</summary>
    internal LoadFactors? Factors => this switch
    {
        { E: { } e, X: { } x, Y: { } y } => new((double)e, (double)x, (double)y),
        { Type: "deep-groove", Axial: { } axial, StaticRating: { } rating } => BearingLoadFactors.DeepGroove(axial.Si, rating.Si, (double)F0),
        { Type: "tapered", E: { } e and > 0 } => BearingLoadFactors.Tapered((double)e),
        _ => null,
    };
}

/// <summary>Rating life.</summary>
/// <param name="EquivalentLoad">Equivalent load P.</param>
/// <param name="BasicLife">Basic rating life, revolutions.</param>
/// <param name="Life">Life at the reliability and condition given, revolutions.</param>
/// <param name="Hours">The same in hours, where the speed is known.</param>
/// <param name="Factors">The load factors used, where there is an axial load.</param>
/// <param name="Thrust">Whether the type takes the thrust, where it was sent.</param>
/// <param name="Clearance">Internal clearance as made and as it runs, where it was sent.</param>
public sealed record BearingLifeWire(
    QuantityWire EquivalentLoad,
    double? BasicLife,
    double? Life,
    double? Hours,
    LoadFactorsWire? Factors,
    BearingThrustWire? Thrust,
    BearingClearanceWire? Clearance)
{
    /// <summary>By the engine.</summary>
    public static BearingLifeWire Of(BearingLifeRequest sent, Display show)
    {
        var factors = sent.Axial is null ? null : sent.Factors;
        var load = BearingLife.EquivalentLoad(sent.Radial.Si, sent.Axial?.Si ?? 0, factors?.E ?? 0, factors?.X ?? 1, factors?.Y ?? 0);
        var basic = BearingLife.BasicRatingLife(sent.DynamicRating.Si, load, sent.Kind);
        var life = BearingLife.AdjustedLife(basic, (double)sent.Reliability, (double)sent.Condition);
        return new(
            show.Si(load, Dimension.Force),
            Numbers.Finite(basic),
            Numbers.Finite(life),
            sent.RevolutionsPerMinute is { } speed ? Numbers.Finite(BearingLife.Hours(life, (double)speed)) : null,
            factors is null ? null : new(Math.Round(factors.E, 9), Math.Round(factors.X, 9), Math.Round(factors.Y, 9)),
            sent.Type is { } type ? BearingThrustWire.Of(type, sent, show) : null,
            sent.Clearance is { } clearance ? Refusal.At("/clearance", () => BearingClearanceWire.Of(clearance, show)) : null);
    }
}

/// <summary>Load factors of a bearing: P = X·Fr + Y·Fa while Fa/Fr is above e.</summary>
/// <param name="E">e.</param>
/// <param name="X">X above e.</param>
/// <param name="Y">Y above e.</param>
public sealed record LoadFactorsWire(double E, double X, double Y);
