using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>One reading: a value, or a bound where the gauge gives no more.</summary>
/// <param name="Value">The value, as it was sent unless other units are asked for.</param>
/// <param name="AtLeast">It is at least this: off the gauge, no-go.</param>
/// <param name="AtMost">It is at most this: a go gauge.</param>
/// <param name="Tight">No gap at all.</param>
/// <param name="At">The plane or angle it was taken at.</param>
public sealed record ReadingWire(QuantityWire? Value, QuantityWire? AtLeast, QuantityWire? AtMost, bool? Tight, string? At) : IInWords
{
    private const string TightWord = "tight";

    /// <summary>From the contract.</summary>
    public static ReadingWire From(Reading reading, Dimension dimension, Display show)
    {
        if (reading.AsSent == TightWord)
            return new(null, null, null, true, reading.At);
        var value = Shown(reading, dimension, show);
        return reading.IsValue ? new(value, null, null, null, reading.At)
            : reading.Low is not null ? new(null, value, null, null, reading.At)
            : new(null, null, value, null, reading.At);
    }

    /// <inheritdoc/>
    public string InWords() => Tight == true ? TightWord
        : Value is { } v ? $"{v.Value.Text} {v.Unit}"
        : AtLeast is { } low ? $">= {low.Value.Text} {low.Unit}"
        : $"<= {AtMost!.Value.Text} {AtMost.Unit}";

    private static QuantityWire Shown(Reading reading, Dimension dimension, Display show)
    {
        if (show.AsSent || dimension != Dimension.Length)
            return new QuantityWire(new SentNumber(reading.AsSent), reading.Unit);
        return show.Length((reading.Low ?? reading.High)!.Value);
    }
}

/// <summary>One reading. Exactly one of value with unit, atLeast, atMost and tight.</summary>
/// <param name="Value">The number that was read.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="AtLeast">It is at least this: off the gauge, no-go.</param>
/// <param name="AtMost">It is at most this: a go gauge.</param>
/// <param name="Tight">No gap at all.</param>
/// <param name="At">The plane or angle it was taken at.</param>
public sealed record ReadingRequest(
    SentNumber? Value = null,
    [Words(20)] string? Unit = null,
    SentQuantity? AtLeast = null,
    SentQuantity? AtMost = null,
    bool Tight = false,
    [Words(60)] string? At = null)
{
    /// <summary>To the contract; null when there was a complaint.</summary>
    public Reading? ToContract(Dimension dimension, string pointer, Complaints complaints)
    {
        var said = new[] { Value is not null, AtLeast is not null, AtMost is not null, Tight }.Count(x => x);
        if (said != 1)
        {
            complaints.Add(pointer, FieldProblems.Contradiction, "A reading is exactly one of value with unit, atLeast, atMost and tight.");
            return null;
        }

        if (Value is { } value)
            return OfValue(value, dimension, pointer, complaints);
        if (dimension == Dimension.Length)
            return OfBound(pointer, complaints);
        complaints.Add(pointer, FieldProblems.WrongDimension, "Bounds are taken of lengths only.");
        return null;
    }

    private Reading? OfValue(SentNumber value, Dimension dimension, string pointer, Complaints complaints)
    {
        if (Unit is null)
        {
            complaints.Add(pointer, FieldProblems.BareNumber, "A number without its unit is refused.", value.Text, null, $"Add \"unit\": \"mm\", or the unit it was read in.");
            return null;
        }

        return Quantities.Read(value, Unit, dimension, pointer, complaints) switch
        {
            Exact exact => new Reading(exact.Value, exact.Value, null, value.Text, Unit, At),
            Real real => new Reading(null, null, real.Si, value.Text, Unit, At),
            _ => null,
        };
    }

    private Reading? OfBound(string pointer, Complaints complaints)
    {
        if (Tight)
            return new Reading(null, Length.Zero, null, "tight", Unit is not null && UnitCatalogue.Find(Unit, Dimension.Length) is not null ? Unit : "mm", At);
        var (bound, name) = AtLeast is { } least ? (least, "/atLeast") : (AtMost!, "/atMost");
        if (Quantities.Read(bound.Value, bound.Unit, Dimension.Length, pointer + name, complaints) is not Exact exact)
            return null;
        return AtLeast is not null
            ? new Reading(exact.Value, null, null, bound.Value.Text, bound.Unit, At)
            : new Reading(null, exact.Value, null, bound.Value.Text, bound.Unit, At);
    }
}
