using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests;

/// <summary>Reads quantities, and says what is wrong with one in this service's words.</summary>
public static class Quantities
{
    /// <summary>The quantity, or null with a complaint.</summary>
    public static Quantity? Read(SentNumber value, string unit, Dimension dimension, string pointer, Complaints complaints)
    {
        // A length says by itself which digits it can't keep; anything else must at least be a number that can be kept exactly.
        if (dimension != Dimension.Length && !value.TryGetDecimal(out _))
        {
            complaints.Add(pointer + "/value", FieldProblems.OutOfRange, "The number is too large, too small or too long to be kept exactly.", value.Text);
            return null;
        }

        var reading = QuantityText.Read(value.Text, unit, dimension);
        if (reading.Problem is { } problem)
            Complain(problem, dimension, pointer, complaints);
        return reading.Quantity;
    }

    private static void Complain(QuantityProblem problem, Dimension dimension, string pointer, Complaints complaints)
    {
        var (kind, at, message) = problem.Code switch
        {
            "unknown-unit" => (FieldProblems.UnknownUnitOfMeasure, "/unit", $"There is no unit {problem.Got}."),
            "wrong-dimension" => (FieldProblems.WrongDimension, "/unit", $"A unit of {Words(dimension)} is needed here."),
            "too-many-digits" => (FieldProblems.TooManyDigits, "/value", "The value has digits beyond the nanometre."),
            // What comes here is a JSON number, so one that can't be read is one with too large an exponent or too many digits.
            _ => (FieldProblems.OutOfRange, "/value", "The value is out of range."),
        };
        var units = kind == FieldProblems.UnknownUnitOfMeasure || kind == FieldProblems.WrongDimension;
        complaints.Add(pointer + at, kind, message, problem.Got, units ? UnitCatalogue.SymbolsOf(dimension) : [problem.Allowed]);
    }

    private static string Words(Dimension dimension) => dimension.ToString().ToLowerInvariant();
}
