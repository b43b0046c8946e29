using RebuildApi.Contracts;
using RebuildApi.Engine.Fits;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A fit by standard classes, by measured sizes, or both.</summary>
/// <param name="Nominal">Nominal size; needed with classes.</param>
/// <param name="Hole">Class of the hole by ISO 286: <c>H7</c>.</param>
/// <param name="Shaft">Class of the shaft by ISO 286: <c>k6</c>.</param>
/// <param name="RunningFit">A running fit of ANSI B4.1 instead: <c>RC4</c>.</param>
/// <param name="Seat">A measured bore with what sits in it.</param>
public sealed record FitRequest(
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity? Nominal = null,
    [Id] string? Hole = null,
    [Id] string? Shaft = null,
    [Id] string? RunningFit = null,
    SeatRequest? Seat = null);

/// <summary>A measured bore with a ring or journal in it.</summary>
/// <param name="Bore">The bore at 20 °C.</param>
/// <param name="Inner">The ring or journal at 20 °C.</param>
/// <param name="BoreMaterial">Of the part with the bore.</param>
/// <param name="InnerMaterial">Of the part in it.</param>
/// <param name="Temperature">Temperature of both.</param>
/// <param name="MustBeTight">Whether the ring must not turn on its seat.</param>
/// <param name="BoreUncertainty">Standard uncertainty of the bore; 0 when not said.</param>
/// <param name="InnerUncertainty">Standard uncertainty of the ring or journal; 0 when not said.</param>
public sealed record SeatRequest(
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Bore,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Inner,
    ExpansionRequest BoreMaterial,
    ExpansionRequest InnerMaterial,
    [Of(Dimension.Temperature)] SentQuantity Temperature,
    bool MustBeTight = true,
    SentQuantity? BoreUncertainty = null,
    SentQuantity? InnerUncertainty = null);

/// <summary>A fit.</summary>
/// <param name="Classes">By standard classes.</param>
/// <param name="Seat">By measured sizes.</param>
public sealed record FitWire(FitClassesWire? Classes, SeatWire? Seat);

/// <summary>A hole and a shaft by their classes.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="Shaft">The shaft.</param>
/// <param name="LeastClearance">Smallest clearance; negative is the largest interference.</param>
/// <param name="MostClearance">Largest clearance; negative is the smallest interference.</param>
public sealed record FitClassesWire(FitZoneWire Hole, FitZoneWire Shaft, QuantityWire LeastClearance, QuantityWire MostClearance)
{
    /// <summary>From the engine.</summary>
    public static FitClassesWire From(Fit fit, Display show) => new(
        FitZoneWire.From(fit.Hole, show), FitZoneWire.From(fit.Shaft, show), show.Length(fit.LeastClearance), show.Length(fit.MostClearance));
}

/// <summary>The limits of a hole or a shaft.</summary>
/// <param name="Class">Its class.</param>
/// <param name="Smallest">Smallest size.</param>
/// <param name="Largest">Largest size.</param>
/// <param name="Lower">Lower deviation from nominal.</param>
/// <param name="Upper">Upper deviation from nominal.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record FitZoneWire(string Class, QuantityWire Smallest, QuantityWire Largest, QuantityWire Lower, QuantityWire Upper, SourceWire Source)
{
    /// <summary>From the engine.</summary>
    public static FitZoneWire From(FitZone zone, Display show) => new(
        zone.Class, show.Length(zone.Smallest), show.Length(zone.Largest), show.Length(zone.Lower), show.Length(zone.Upper), SourceWire.From(zone.Source));
}

/// <summary>A measured seat at 20 °C and at temperature.</summary>
/// <param name="Clearance">Bore minus what sits in it at 20 °C; negative is interference.</param>
/// <param name="StandardUncertainty">Its standard uncertainty.</param>
/// <param name="Change">Change of the clearance at temperature.</param>
/// <param name="ThereClearance">Clearance at temperature.</param>
/// <param name="ThereUncertainty">Its standard uncertainty, that of the coefficients included.</param>
/// <param name="LooseChance">Chance that the fit is loose there.</param>
public sealed record SeatWire(
    QuantityWire Clearance, QuantityWire StandardUncertainty, QuantityWire Change, QuantityWire ThereClearance, QuantityWire ThereUncertainty, double? LooseChance)
{
    /// <summary>From the engine.</summary>
    public static SeatWire From(SeatFit seat, Display show) => new(
        show.Length(seat.Clearance),
        show.Metres(seat.StandardUncertainty),
        show.Metres(seat.Change),
        show.Length(seat.ThereClearance),
        show.Metres(seat.ThereUncertainty),
        Numbers.Finite(seat.LooseChance));
}
