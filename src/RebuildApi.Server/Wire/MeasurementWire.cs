using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.Reasons;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>Raw readings of one characteristic of one revision of a part.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">The revision it was taken of.</param>
/// <param name="Characteristic">Id of the characteristic.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Method">The method.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="Temperature">Temperature of the part; 20 °C where it was not said.</param>
/// <param name="Supersedes">The measurement it corrects.</param>
/// <param name="InstrumentTemperature">Temperature of the instrument; that of the part where it was not said.</param>
/// <param name="TemperatureHalfWidth">How far off the temperatures may be.</param>
public sealed record MeasurementWire(
    string Id,
    string Component,
    int Revision,
    string Characteristic,
    ImmutableArray<ReadingWire> Readings,
    string? Instrument,
    string? Method,
    string Person,
    string Bench,
    DateTimeOffset Time,
    QuantityWire? Temperature,
    string? Supersedes,
    QuantityWire? InstrumentTemperature,
    QuantityWire? TemperatureHalfWidth)
{
    /// <summary>From the contract.</summary>
    public static MeasurementWire From(Measurement m, Display show)
    {
        var dimension = m.Readings.Any(r => r.Si is not null) ? Dimension.Ratio : Dimension.Length;
        return new(m.Id, m.Component, m.Revision, m.Characteristic, [.. m.Readings.Select(r => ReadingWire.From(r, dimension, show))],
            m.Taken.Instrument, m.Taken.Method, m.Taken.Person, m.Taken.Bench, m.Taken.At,
            m.Taken.Temperature is { } t ? show.Si(t, Dimension.Temperature) : null, m.Supersedes,
            m.Taken.InstrumentTemperature is { } own ? show.Si(own, Dimension.Temperature) : null,
            m.Taken.TemperatureHalfWidth is { } off ? show.Difference(off, Dimension.Temperature) : null);
    }
}

/// <summary>A batch of measurements. What is said for the batch holds for each measurement that does not say it itself.</summary>
/// <param name="Measurements">The measurements; all are stored or none.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Temperature">Temperature of the parts.</param>
/// <param name="InstrumentTemperature">Temperature of the instruments; that of the parts when not said.</param>
/// <param name="TemperatureHalfWidth">How far off the temperatures may be, as a half-width.</param>
public sealed record MeasurementBatchRequest(
    [Entries(1, 1000)] ImmutableArray<MeasurementRequest> Measurements,
    [Words(100)] string? Person = null,
    [Words(100)] string? Bench = null,
    DateTimeOffset? Time = null,
    [Id] string? Instrument = null,
    [Of(Dimension.Temperature)] SentQuantity? Temperature = null,
    [Of(Dimension.Temperature)] SentQuantity? InstrumentTemperature = null,
    SentQuantity? TemperatureHalfWidth = null) : IFromSheet<MeasurementBatchRequest, MeasurementBatchRequest>
{
    /// <inheritdoc/>
    public static (MeasurementBatchRequest Value, ImmutableArray<string> Pointers) FromJson(MeasurementBatchRequest json) => (json, [.. json.Measurements.Select((_, i) => Pointer.Entry("/measurements", i))]);

    /// <inheritdoc/>
    public static (MeasurementBatchRequest Value, ImmutableArray<string> Pointers) FromSheet(ImmutableArray<SheetRow> rows, Complaints complaints)
    {
        var own = rows.Where(r => r.Is("reading") && r.IsFilled).ToArray();
        if (own.Length == 0)
            complaints.Add("row/2", FieldProblems.BadCount, "No row holds a reading.");
        return (new([.. own.Select(r => MeasurementRequest.FromRow(r, complaints))]), [.. own.Select(r => r.Pointer)]);
    }
}

/// <summary>Readings of one characteristic, by its address or by part and characteristic.</summary>
/// <param name="Readings">The readings.</param>
/// <param name="At">The address: <c>third-gear/bore</c>; the second of several like parts is <c>keys-3-4#2/length</c>.</param>
/// <param name="Component">The part, where no address is given.</param>
/// <param name="Characteristic">The characteristic, where no address is given.</param>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Method">The method.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
/// <param name="Temperature">Temperature of the part.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
/// <param name="Supersedes">The measurement it corrects.</param>
/// <param name="InstrumentTemperature">Temperature of the instrument; that of the part when not said.</param>
/// <param name="TemperatureHalfWidth">How far off the temperatures may be, as a half-width.</param>
public sealed record MeasurementRequest(
    [Entries(1, 100)] ImmutableArray<ReadingRequest> Readings,
    [Words(130)] string? At = null,
    [Id] string? Component = null,
    [Words(64)] string? Characteristic = null,
    [Id] string? Instrument = null,
    [Words(60)] string? Method = null,
    [Words(100)] string? Person = null,
    [Words(100)] string? Bench = null,
    DateTimeOffset? Time = null,
    [Of(Dimension.Temperature)] SentQuantity? Temperature = null,
    [Id] string? Id = null,
    [Id] string? Supersedes = null,
    [Of(Dimension.Temperature)] SentQuantity? InstrumentTemperature = null,
    SentQuantity? TemperatureHalfWidth = null)
{
    /// <summary>From a row of a sheet.</summary>
    public static MeasurementRequest FromRow(SheetRow row, Complaints complaints)
    {
        var readings = SheetRow.Values.Where(row.Cells.ContainsKey)
            .SelectMany(c => ReadingCell.Read(row[c]!, row["unit"], $"{row.Pointer}/{c}", complaints));
        return new([.. readings], $"{row["position"]}/{row["id"]}", Instrument: row["instrument"], Person: row.Person, Bench: row.Bench);
    }

    /// <summary>How it was taken, the batch filling in what this does not say.</summary>
    public TakenSaid Taken(MeasurementBatchRequest batch) => new(
        Instrument ?? batch.Instrument, Method, Person ?? batch.Person, Bench ?? batch.Bench, Time ?? batch.Time, Temperature ?? batch.Temperature)
    {
        InstrumentTemperature = InstrumentTemperature ?? batch.InstrumentTemperature,
        TemperatureHalfWidth = TemperatureHalfWidth ?? batch.TemperatureHalfWidth,
    };
}

/// <summary>What came of a batch of measurements.</summary>
/// <param name="Stored">The measurements, as they are kept.</param>
/// <param name="Found">Parts that were not recorded before and are now, since something was read of them.</param>
/// <param name="Doubts">Readings that would fit better in another unit or with two digits swapped; they are stored as sent, and to be read again.</param>
/// <param name="UnitVersion">The version of the unit after it.</param>
public sealed record MeasurementBatchWire(
    ImmutableArray<MeasurementWire> Stored, ImmutableArray<ComponentWire> Found, ImmutableArray<DoubtWire> Doubts, long UnitVersion);

/// <summary>A doubt about a reading.</summary>
/// <param name="Measurement">The measurement, or the trial assembly.</param>
/// <param name="At">What was read.</param>
/// <param name="Code">Which doubt.</param>
/// <param name="Text">The doubt in words.</param>
/// <param name="Arguments">The numbers behind it.</param>
public sealed record DoubtWire(string Measurement, string At, string Code, string Text, IReadOnlyDictionary<string, string> Arguments)
{
    /// <summary>From the engine.</summary>
    /// <param name="id">The measurement or trial assembly.</param>
    /// <param name="doubt">The doubt.</param>
    public static DoubtWire From(string id, Doubt doubt) =>
        new(id, doubt.Reason.Rule, doubt.Code, ReasonText.Words(doubt.Reason), doubt.Reason.Arguments);
}
