using RebuildApi.Contracts;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>How a type of bearing takes thrust.</summary>
/// <param name="Directions">In how many directions; one that takes it one way needs a mate for the other.</param>
/// <param name="Capacity">Thrust that it takes for long, where the static rating was sent and the type has one number for it.</param>
/// <param name="Enough">Whether it takes the axial load; absent when that can't be said.</param>
public sealed record BearingThrustWire(int Directions, QuantityWire? Capacity, bool? Enough)
{
    /// <summary>By the engine.</summary>
    internal static BearingThrustWire Of(string id, BearingLifeRequest sent, Display show)
    {
        var type = BearingTypes.Find(id)!;
        var capacity = type.ThrustShare == 0 ? 0 : sent.StaticRating is { } rating ? BearingTypes.ThrustCapacity(type, rating.Si) : null;
        return new(
            type.Directions,
            capacity is { } known ? show.Si(known, Dimension.Force) : null,
            sent.Axial is { } axial && capacity is { } most ? Math.Abs(axial.Si) <= most : null);
    }
}

/// <summary>The radial internal clearance of a bearing, and what fit and warmth take of it.</summary>
/// <param name="Bore">Its bore.</param>
/// <param name="Group">Its group of clearance.</param>
/// <param name="Bearing">Which table: deep-groove ball or cylindrical roller.</param>
/// <param name="Interference">Interference on the shaft; negative is a loose fit.</param>
/// <param name="ShareOfInterference">Share of it that reaches the raceway: 0.7 to 0.9 on a solid steel shaft (rule of thumb, from memory).</param>
/// <param name="InnerWarmerBy">How much warmer the inner ring runs, K.</param>
/// <param name="RacewayDiameter">Mean diameter of the raceways, for that warmth.</param>
/// <param name="ExpansionPerKelvin">Expansion of the rings, 1e-6/K; 11.5 for bearing steel (engineering tables).</param>
public sealed record BearingClearanceRequest(
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Bore,
    [OneOf("c2", "cn", "c3", "c4", "c5")] string Group,
    [OneOf("deep-groove", "cylindrical")] string Bearing = "deep-groove",
    [Of(Dimension.Length)] SentQuantity? Interference = null,
    [Between(0, 1)] decimal ShareOfInterference = 0.8m,
    [Between(-300, 300)] decimal InnerWarmerBy = 0m,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? RacewayDiameter = null,
    [Between(0, 100)] decimal ExpansionPerKelvin = 11.5m);

/// <summary>Internal clearance as made and as it runs.</summary>
/// <param name="MadeLow">Least as made.</param>
/// <param name="MadeHigh">Most as made.</param>
/// <param name="LostToFit">What the interference takes.</param>
/// <param name="LostToWarmth">What the warmer inner ring takes.</param>
/// <param name="RunsLow">Least that is left; negative: it runs preloaded.</param>
/// <param name="RunsHigh">Most that is left.</param>
public sealed record BearingClearanceWire(
    QuantityWire MadeLow, QuantityWire MadeHigh, QuantityWire LostToFit, QuantityWire LostToWarmth, QuantityWire RunsLow, QuantityWire RunsHigh)
{
    /// <summary>By the engine.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The bore is outside the table, or a warmth without the diameter that it acts on.</exception>
    internal static BearingClearanceWire Of(BearingClearanceRequest sent, Display show)
    {
        var group = Enum.Parse<ClearanceGroup>(sent.Group, ignoreCase: true);
        var made = (sent.Bearing == "cylindrical" ? InternalClearance.CylindricalRoller(sent.Bore.Length, group) : InternalClearance.DeepGroove(sent.Bore.Length, group))
            ?? throw new ArgumentOutOfRangeException(nameof(sent), "The table of clearance groups does not hold this bore.");
        if (sent.InnerWarmerBy != 0 && sent.RacewayDiameter is null)
            throw new ArgumentOutOfRangeException(nameof(sent), "For what warmth takes, the mean diameter of the raceways is needed.");
        var fit = InternalClearance.LossByInterference(sent.Interference?.Si ?? 0, (double)sent.ShareOfInterference);
        var warmth = InternalClearance.LossByTemperature((double)sent.ExpansionPerKelvin * 1e-6, (double)sent.InnerWarmerBy, sent.RacewayDiameter?.Si ?? 0);
        return new(
            show.Of(made.Low!), show.Of(made.High!), show.Metres(fit), show.Metres(warmth),
            show.Metres(made.Low!.InSi - fit - warmth), show.Metres(made.High!.InSi - fit - warmth));
    }
}
