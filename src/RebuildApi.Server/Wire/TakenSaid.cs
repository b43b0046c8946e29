using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>How, by whom and when something was taken, as far as one entry or its batch says so; the entry stands before the batch.</summary>
/// <param name="Instrument">Id of the instrument.</param>
/// <param name="Method">The method.</param>
/// <param name="Person">Who.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When.</param>
/// <param name="Temperature">Temperature of the part.</param>
public sealed record TakenSaid(string? Instrument, string? Method, string? Person, string? Bench, DateTimeOffset? Time, SentQuantity? Temperature)
{
    /// <summary>Temperature of the instrument.</summary>
    public SentQuantity? InstrumentTemperature { get; init; }

    /// <summary>How far off the temperatures may be.</summary>
    public SentQuantity? TemperatureHalfWidth { get; init; }

    /// <summary>To the contract; what is missing is complained of.</summary>
    public Taken ToContract(string pointer, DateTimeOffset now, Func<string, bool> knowsInstrument, Complaints complaints)
    {
        if (Person is null)
            complaints.Add(pointer + "/person", FieldProblems.MissingField, "Who read or saw it is missing.");
        if (Bench is null)
            complaints.Add(pointer + "/bench", FieldProblems.MissingField, "The bench is missing.");
        if (Time > now.AddDays(1))
            complaints.Add(pointer + "/time", FieldProblems.OutOfRange, "The time lies in the future.", Time?.ToString("O", CultureInfo.InvariantCulture));
        if (Instrument is not null && !knowsInstrument(Instrument))
            complaints.Add(pointer + "/instrument", FieldProblems.UnknownInstrument, $"There is no instrument {Instrument}.", Instrument);
        return new Taken(Instrument, Method, Person ?? "", Bench ?? "", Time ?? now, Temperature?.Si)
        {
            InstrumentTemperature = InstrumentTemperature?.Si,
            TemperatureHalfWidth = Differences.Read(TemperatureHalfWidth, Dimension.Temperature, pointer + "/temperatureHalfWidth", complaints),
        };
    }
}
