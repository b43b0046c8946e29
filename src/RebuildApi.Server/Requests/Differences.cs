using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>
/// Reads uncertainties and other differences. They are estimates, so that no whole nanometres are asked for, and a degree of temperature is a
/// step, not a point of a scale.
/// </summary>
public static class Differences
{
    /// <summary>The difference in SI; null when there is none, or with a complaint when it can't be read or is negative.</summary>
    public static double? Read(SentQuantity? sent, Dimension dimension, string pointer, Complaints complaints)
    {
        if (sent is null)
            return null;
        if (UnitCatalogue.Find(sent.Unit, dimension) is not { } unit)
        {
            _ = Quantities.Read(sent.Value, sent.Unit, dimension, pointer, complaints);
            return null;
        }

        if (sent.Value.TryGetDecimal(out var number) && number >= 0 && (double)number * StepOf(unit) is <= QuantityText.LargestSi and var si)
            return si;
        complaints.Add(pointer + "/value", FieldProblems.OutOfRange, "The value must be 0 or greater, and small enough to be kept.", sent.Value.Text);
        return null;
    }

    private static double StepOf(UnitOfMeasure unit) => unit switch
    {
        LengthUnit length => length.Nanometres * 1e-9,
        RealUnit real => real.ToSi(1) - real.ToSi(0),
        _ => throw new InvalidOperationException($"{unit.Ucum} is of no known sort."),
    };
}
