using FamilyFiles.Forms;

namespace FamilyFiles.Values;

/// <summary>A number with its unit as one text: <c>0.015 in</c>. Lengths are exact to the nanometre; everything else is a double in SI.</summary>
internal static class QuantityText
{
    private const int LongestNumber = 32;

    /// <summary>Any quantity; a number alone is a ratio.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static Quantity Read(string text)
    {
        var (number, unit) = Split(text);
        return With(number, unit);
    }

    /// <summary>A number and a unit that were written apart.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static Quantity With(string number, string unit)
    {
        if (TryLength(number, unit) is { } length)
            return new Exact(length);
        var known = Unit.All.FirstOrDefault(u => u.Names.Contains(unit))
            ?? throw new FormatException($"'{Plain.Short(unit)}' is not a unit that is known");
        return new Real(Finite(known.ToSi(Number(number))), known.Dimension);
    }

    /// <summary>A length.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static Length Length(string text) => Read(text) is Exact exact ? exact.Value : throw new FormatException($"'{Plain.Short(text)}' is not a length with its unit");

    /// <summary>A quantity of one dimension, in SI.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static double Real(string text, Dimension dimension) =>
        Read(text) is Real real && real.Dimension == dimension ? real.Si : throw new FormatException($"'{Plain.Short(text)}' is not one of {dimension}");

    /// <summary>A number with a point, whatever the culture.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static double Number(string text) =>
        text.Length <= LongestNumber && double.TryParse(text, NumberStyles.Float & ~NumberStyles.AllowTrailingWhite & ~NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out var value)
            ? Finite(value)
            : throw new FormatException($"'{Plain.Short(text)}' is not a number");

    /// <summary>An exact decimal number.</summary>
    /// <exception cref="FormatException">What is wrong.</exception>
    public static decimal Decimal(string text) =>
        text.Length <= LongestNumber && decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value
            : throw new FormatException($"'{Plain.Short(text)}' is not a number");

    /// <summary>The number at the beginning, and the unit that follows it.</summary>
    public static (string Number, string Unit) Split(string text)
    {
        var trimmed = text.Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or '+' or '-' || IsExponent(trimmed, end)))
            end++;
        return (trimmed[..end], trimmed[end..].Trim());
    }

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '+' or '-');

    private static Length? TryLength(string number, string unit)
    {
        try
        {
            return unit switch
            {
                "in" => RebuildApi.Contracts.Length.Inches(Decimal(number)),
                "thou" => RebuildApi.Contracts.Length.Inches(Decimal(number) / 1000),
                "mm" => RebuildApi.Contracts.Length.Millimetres(Decimal(number)),
                "um" or "µm" => RebuildApi.Contracts.Length.Micrometres(Decimal(number)),
                _ => null,
            };
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw new FormatException(e.Message.Split(" (Parameter")[0].Split('\n')[0]);
        }
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : throw new FormatException("The number is larger than can be kept");
}
