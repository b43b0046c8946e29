using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>What a calibration found of an instrument, before anything was adjusted.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Instrument">The instrument.</param>
/// <param name="Time">When it was found so, UTC.</param>
/// <param name="Points">The errors as found.</param>
/// <param name="LargestError">The largest of them, without its sign.</param>
/// <param name="LimitOfError">The limit that they were held against.</param>
/// <param name="WithinLimit">Whether every error lay within it; absent where the instrument has no limit.</param>
/// <param name="Certificate">The certificate's own number.</param>
/// <param name="Person">Who recorded it.</param>
/// <param name="Recall">Where to ask what rests on the readings that are now in doubt; absent when none are.</param>
public sealed record CalibrationWire(
    string Id,
    string Instrument,
    DateTimeOffset Time,
    ImmutableArray<CalibrationPointWire> Points,
    QuantityWire LargestError,
    QuantityWire? LimitOfError,
    bool? WithinLimit,
    string? Certificate,
    string Person,
    string? Recall)
{
    /// <summary>From the store.</summary>
    public static CalibrationWire From(Calibration c, Display show) => new(
        c.Id,
        c.Instrument,
        c.At,
        [.. c.Points.Select(p => new CalibrationPointWire(show.Of(p.Nominal), Shown(p.Error, show)))],
        Shown(c.Points.MaxBy(p => Math.Abs(p.Error.InSi))!.Error, show, withoutSign: true),
        c.LimitOfError is { } limit ? Shown(limit, show) : null,
        c.IsWithinLimit,
        c.Certificate,
        c.Person,
        c.IsWithinLimit == false ? $"/v1/instruments/{c.Instrument}/recall" : null);

    private static QuantityWire Shown(Quantity error, Display show, bool withoutSign = false) => error is Exact exact
        ? show.Length(withoutSign && exact.Value < Length.Zero ? -exact.Value : exact.Value)
        : show.Difference(withoutSign ? Math.Abs(error.InSi) : error.InSi, error.Kind);
}

/// <summary>One point of a calibration.</summary>
/// <param name="Nominal">The value of the standard.</param>
/// <param name="Error">What was read less the value of the standard.</param>
public sealed record CalibrationPointWire(QuantityWire Nominal, QuantityWire Error) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Error.Value.Text} {Error.Unit} at {Nominal.Value.Text} {Nominal.Unit}";
}

/// <summary>What a calibration found, to be recorded.</summary>
/// <param name="Points">The errors as found, before anything was adjusted.</param>
/// <param name="Person">Who records it.</param>
/// <param name="Time">When it was found so; now when not said.</param>
/// <param name="Due">The day the new calibration ends; the old day stays when not said.</param>
/// <param name="Certificate">The certificate's own number.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record CalibrationRequest(
    [Entries(1, 200)] ImmutableArray<CalibrationPointRequest> Points,
    [Words(100)] string Person,
    DateTimeOffset? Time = null,
    DateOnly? Due = null,
    [Words(100)] string? Certificate = null,
    [Id] string? Id = null);

/// <summary>One point of a calibration.</summary>
/// <param name="Nominal">The value of the standard.</param>
/// <param name="Read">What the instrument read of it.</param>
public sealed record CalibrationPointRequest(SentQuantity Nominal, SentQuantity Read);
