using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Rating life of a rolling bearing.</summary>
/// <param name="DynamicRating">Basic dynamic load rating C.</param>
/// <param name="Radial">Radial load.</param>
/// <param name="Element">Balls or rollers.</param>
/// <param name="Axial">Axial load.</param>
/// <param name="E">e of the bearing; needed with an axial load.</param>
/// <param name="X">X above e.</param>
/// <param name="Y">Y above e.</param>
/// <param name="RevolutionsPerMinute">Steady speed, for hours.</param>
/// <param name="Reliability">0.90, 0.95, 0.96, 0.97, 0.98 or 0.99.</param>
/// <param name="Condition">Factor for lubrication and cleanliness; 1 when it is not known.</param>
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
    [Between(0.0001, 100)] decimal Condition = 1m)
{
    /// <summary>To the engine.</summary>
    internal RollingElement Kind => Element == "ball" ? RollingElement.Ball : RollingElement.Roller;
}

/// <summary>Rating life.</summary>
/// <param name="EquivalentLoad">Equivalent load P.</param>
/// <param name="BasicLife">Basic rating life, revolutions.</param>
/// <param name="Life">Life at the reliability and condition given, revolutions.</param>
/// <param name="Hours">The same in hours, where the speed is known.</param>
public sealed record BearingLifeWire(QuantityWire EquivalentLoad, double? BasicLife, double? Life, double? Hours)
{
    /// <summary>By the engine.</summary>
    public static BearingLifeWire Of(BearingLifeRequest sent, Display show)
    {
        var load = BearingLife.EquivalentLoad(sent.Radial.Si, sent.Axial?.Si ?? 0, (double)(sent.E ?? 0), (double)(sent.X ?? 1), (double)(sent.Y ?? 0));
        var basic = BearingLife.BasicRatingLife(sent.DynamicRating.Si, load, sent.Kind);
        var life = BearingLife.AdjustedLife(basic, (double)sent.Reliability, (double)sent.Condition);
        return new(
            show.Si(load, Dimension.Force),
            Numbers.Finite(basic),
            Numbers.Finite(life),
            sent.RevolutionsPerMinute is { } speed ? Numbers.Finite(BearingLife.Hours(life, (double)speed)) : null);
    }
}
