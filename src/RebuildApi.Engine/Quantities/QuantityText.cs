using RebuildApi.Contracts;

namespace RebuildApi.Engine.Quantities;

/// <summary>Turns a number and a unit as they were sent into a quantity, exactly or not at all.</summary>
public static class QuantityText
{
    /// <summary>The longest length taken: one kilometre. No gearbox needs more, and what is longer is a slip.</summary>
    public static readonly Length Longest = new(1_000_000_000_000);

    /// <summary>The largest number taken of anything else, in SI.</summary>
    public const double LargestSi = 1e12;

    /// <summary>Reads a quantity of a known dimension.</summary>
    /// <param name="value">The number, letter for letter.</param>
    /// <param name="unit">The unit, as a UCUM code or a shop's word.</param>
    /// <param name="dimension">What it must be a quantity of.</param>
    public static QuantityReading Read(string value, string unit, Dimension dimension)
    {
        var known = UnitCatalogue.Find(unit, dimension);
        if (known is null)
            return WrongUnit(unit, dimension);
        return NumberText.TryRead(value) is { } number
            ? Convert(number, value, known)
            : Refused("not-a-number", value, "a decimal number such as 0.015");
    }

    private static QuantityReading Convert(NumberText number, string value, UnitOfMeasure unit) => unit switch
    {
        LengthUnit length => Exactly(number, value, length),
        RealUnit real => Estimated(number, value, real),
        _ => throw new InvalidOperationException($"{unit.Ucum} is of no known sort."),
    };

    private static QuantityReading Exactly(NumberText number, string value, LengthUnit unit)
    {
        if (Math.Abs(number.ToDouble()) * unit.Nanometres > Longest.Nanometres)
            return Refused("out-of-range", value, "a length of at most 1 km");
        return number.TimesWhole(unit.Nanometres) is { } nanometres
            ? new QuantityReading(new Exact(new Length(nanometres)), null)
            : Refused("too-many-digits", value, "a whole number of nanometres: at most 6 decimals of a millimetre, 5 of an inch");
    }

    private static QuantityReading Estimated(NumberText number, string value, RealUnit unit)
    {
        var si = unit.ToSi(number.ToDouble());
        if (!double.IsFinite(si) || Math.Abs(si) > LargestSi)
            return Refused("out-of-range", value, "a smaller number");
        if (unit.Dimension == Dimension.Temperature && si < 0)
            return Refused("out-of-range", value, "a temperature above absolute zero");
        return new QuantityReading(new Real(si, unit.Dimension), null);
    }

    private static QuantityReading WrongUnit(string unit, Dimension dimension)
    {
        var allowed = string.Join(", ", UnitCatalogue.SymbolsOf(dimension));
        return UnitCatalogue.Find(unit) is { } other
            ? Refused("wrong-dimension", unit, $"a unit of {Name(dimension)}, not of {Name(other.Dimension)}: {allowed}")
            : Refused("unknown-unit", unit, allowed);
    }

    private static string Name(Dimension dimension) => dimension.ToString().ToLowerInvariant();

    private static QuantityReading Refused(string code, string got, string allowed) => new(null, new QuantityProblem(code, got, allowed));
}

/// <summary>A quantity, or what is wrong with what was sent.</summary>
/// <param name="Quantity">The quantity, when it could be read.</param>
/// <param name="Problem">What is wrong, when it could not.</param>
public sealed record QuantityReading(Quantity? Quantity, QuantityProblem? Problem);

/// <summary>What is wrong with a quantity as sent.</summary>
/// <param name="Code"><c>not-a-number</c>, <c>unknown-unit</c>, <c>wrong-dimension</c>, <c>too-many-digits</c>, <c>out-of-range</c>.</param>
/// <param name="Got">What was sent.</param>
/// <param name="Allowed">What is allowed.</param>
public sealed record QuantityProblem(string Code, string Got, string Allowed);
