using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
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
public sealed record InstrumentWire(
    string Id,
    string Name,
    string Type,
    QuantityWire Resolution,
    QuantityWire? LimitOfError,
    ErrorModel ErrorModel,
    DateOnly? CalibrationDue,
    long Version)
{
    /// <summary>From the store.</summary>
    public static InstrumentWire From(Instrument instrument, Display show)
    {
        var state = instrument.State;
        return new(state.Id, instrument.Name, state.Type, Step(state.Resolution, show), state.LimitOfError is { } e ? Step(e, show) : null,
            state.ErrorModel, state.CalibrationDue, instrument.Version);
    }

    // A step of temperature is a difference: 1 °C is 1 K.
    private static QuantityWire Step(Quantity step, Display show) => step is Exact exact ? show.Length(exact.Value) : show.Difference(step.InSi, step.Kind);
}

/// <summary>An instrument to be registered.</summary>
/// <param name="Name">What a person calls it.</param>
/// <param name="Type">Its type: <c>outside-micrometer</c>.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="LimitOfError">Largest error that its calibration allows, as a half-width; none when unknown.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends.</param>
public sealed record InstrumentRequest(
    [Words(100)] string Name,
    [Id] string Type,
    SentQuantity Resolution,
    [Id] string? Id = null,
    SentQuantity? LimitOfError = null,
    ErrorModel ErrorModel = ErrorModel.Rectangular,
    DateOnly? CalibrationDue = null);

/// <summary>Changes of an instrument; what is left out stays, null takes away.</summary>
/// <param name="Name">What a person calls it.</param>
/// <param name="Resolution">Smallest step that can be read.</param>
/// <param name="LimitOfError">Largest error that its calibration allows.</param>
/// <param name="ErrorModel">How that error is spread.</param>
/// <param name="CalibrationDue">The day its calibration ends.</param>
public sealed record InstrumentChangeRequest(
    [Words(100)] string? Name = null,
    SentQuantity? Resolution = null,
    SentQuantity? LimitOfError = null,
    ErrorModel? ErrorModel = null,
    DateOnly? CalibrationDue = null);
