using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire.Calculations;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A measuring instrument of the shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Type">Its type.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="LimitOfError">Largest error that its calibration allows, as a half-width.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
/// <param name="Range">What it reads.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty (k = 1) of the standard that it was calibrated or set against.</param>
/// <param name="Studied">What gauge studies found of it; goes into every budget there.</param>
/// <param name="InDoubt">Times whose readings are in doubt, since a later calibration found it wrong.</param>
/// <param name="Expansion">How its scale grows with temperature.</param>
public sealed record InstrumentWire(
    string Id,
    string Name,
    string Type,
    QuantityWire Resolution,
    QuantityWire? LimitOfError,
    ErrorModel ErrorModel,
    DateOnly? CalibrationDue,
    long Version,
    RangeWire? Range,
    QuantityWire? ReferenceUncertainty,
    ImmutableArray<StudiedWire> Studied,
    ImmutableArray<DoubtfulTimeWire> InDoubt,
    ExpansionWire? Expansion)
{
    /// <summary>From the store.</summary>
    public static InstrumentWire From(Instrument instrument, Display show)
    {
        var state = instrument.State;
        return new(state.Id, instrument.Name, state.Type, Step(state.Resolution, show), state.LimitOfError is { } e ? Step(e, show) : null,
            state.ErrorModel, state.CalibrationDue, instrument.Version,
            state.RangeLow is null && state.RangeHigh is null ? null : new RangeWire(show.OfMaybe(state.RangeLow), show.OfMaybe(state.RangeHigh)),
            state.ReferenceUncertainty is { } u ? Step(u, show) : null,
            [.. (state.Studies ?? []).Select(s => StudiedWire.From(s, state.Resolution.Kind, show))],
            [.. (state.InDoubt ?? []).Select(t => new DoubtfulTimeWire(t.After, t.UpTo))],
            state.ExpansionPerKelvin is { } grows ? new ExpansionWire(Millionths(grows), Millionths(state.ExpansionHalfWidth ?? 0)) : null);
    }

    private static decimal Millionths(double perKelvin) => Math.Round((decimal)(perKelvin * 1e6), 9);

    // A step of temperature is a difference: 1 °C is 1 K.
    private static QuantityWire Step(Quantity step, Display show) => step is Exact exact ? show.Length(exact.Value) : show.Difference(step.InSi, step.Kind);
}

/// <summary>How the scale of an instrument grows with temperature, in millionths per kelvin.</summary>
/// <param name="PerMillionKelvin">Expansion coefficient.</param>
/// <param name="HalfWidth">Half-width of what is not known of it.</param>
public sealed record ExpansionWire(decimal PerMillionKelvin, decimal HalfWidth);

/// <summary>What an instrument reads, ends included.</summary>
/// <param name="Low">The smallest value.</param>
/// <param name="High">The largest value.</param>
public sealed record RangeWire(QuantityWire? Low, QuantityWire? High);

/// <summary>What a gauge study found of an instrument at one characteristic.</summary>
/// <param name="Family">The family.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">The characteristic.</param>
/// <param name="Repeatability">Standard deviation of one person's repeats.</param>
/// <param name="Reproducibility">Standard deviation between persons, their interaction with the parts included.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom behind the repeatability.</param>
public sealed record StudiedWire(
    string? Family, string Kind, string Characteristic, QuantityWire Repeatability, QuantityWire Reproducibility, double? DegreesOfFreedom)
{
    /// <summary>From the contract.</summary>
    public static StudiedWire From(GaugeCapability s, Dimension dimension, Display show) => new(
        s.Family, s.Kind, s.Characteristic, show.Difference(s.Repeatability, dimension), show.Difference(s.Reproducibility, dimension),
        Numbers.Finite(s.DegreesOfFreedom));
}

/// <summary>A time in which an instrument may have been wrong.</summary>
/// <param name="After">When it was last found right, UTC; absent when it never was.</param>
/// <param name="UpTo">When it was found wrong, UTC.</param>
public sealed record DoubtfulTimeWire(DateTimeOffset? After, DateTimeOffset UpTo) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => FormattableString.Invariant($"{After:O} to {UpTo:O}");
}

/// <summary>What an instrument reads, ends included; at least one end.</summary>
/// <param name="Low">The smallest value.</param>
/// <param name="High">The largest value.</param>
public sealed record RangeRequest(SentQuantity? Low = null, SentQuantity? High = null);

/// <summary>An instrument to be registered.</summary>
/// <param name="Name">What a person calls it.</param>
/// <param name="Type">Its type: <c>outside-micrometer</c>.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="LimitOfError">Largest error that its calibration allows, as a half-width; none when unknown.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends.</param>
/// <param name="Range">What it reads.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty (k = 1) of the standard that it was calibrated or set against.</param>
/// <param name="Expansion">How its scale grows with temperature; it is taken as right at any temperature when not said.</param>
public sealed record InstrumentRequest(
    [Words(100)] string Name,
    [Id] string Type,
    SentQuantity Resolution,
    [Id] string? Id = null,
    SentQuantity? LimitOfError = null,
    ErrorModel ErrorModel = ErrorModel.Rectangular,
    DateOnly? CalibrationDue = null,
    RangeRequest? Range = null,
    SentQuantity? ReferenceUncertainty = null,
    ExpansionRequest? Expansion = null);

/// <summary>Changes of an instrument; what is left out stays, null takes away.</summary>
/// <param name="Name">What a person calls it.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="LimitOfError">Largest error that its calibration allows.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends.</param>
/// <param name="Range">What it reads.</param>
/// <param name="ReferenceUncertainty">Standard uncertainty of the standard that it was set against.</param>
/// <param name="Expansion">How its scale grows with temperature.</param>
public sealed record InstrumentChangeRequest(
    [Words(100)] string? Name = null,
    SentQuantity? Resolution = null,
    SentQuantity? LimitOfError = null,
    ErrorModel? ErrorModel = null,
    DateOnly? CalibrationDue = null,
    RangeRequest? Range = null,
    SentQuantity? ReferenceUncertainty = null,
    ExpansionRequest? Expansion = null);
