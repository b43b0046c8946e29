using System.Globalization;

namespace RebuildApi.Engine.Identity;

/// <summary>A double as ECMAScript writes it (ECMA-262, Number::toString), which RFC 8785 asks for.</summary>
internal static class EcmaScriptNumber
{
    public static string Format(double value)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "JSON has no such number.");
        if (value == 0)
            return "0";
        if (value < 0)
            return "-" + Format(-value);

        // "R" gives the shortest digits that read back to the same double.
        var (digits, point) = Split(value.ToString("R", CultureInfo.InvariantCulture));
        return Place(digits, point);
    }

    /// <summary>Digits without leading or trailing zeros, and the place of the point counted from before the first digit.</summary>
    private static (string Digits, int Point) Split(string shortest)
    {
        var exponentAt = shortest.IndexOf('E', StringComparison.Ordinal);
        var exponent = exponentAt < 0 ? 0 : int.Parse(shortest[(exponentAt + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var mantissa = exponentAt < 0 ? shortest : shortest[..exponentAt];
        var pointAt = mantissa.IndexOf('.', StringComparison.Ordinal);
        var whole = pointAt < 0 ? mantissa : mantissa[..pointAt];
        var fraction = pointAt < 0 ? "" : mantissa[(pointAt + 1)..];
        var all = whole + fraction;
        var leading = all.Length - all.TrimStart('0').Length;
        return (all.Trim('0'), whole.Length - leading + exponent);
    }

    private static string Place(string digits, int point)
    {
        if (point is > 0 and <= 21)
        {
            return digits.Length <= point
                ? digits + new string('0', point - digits.Length)
                : digits[..point] + "." + digits[point..];
        }

        if (point is > -6 and <= 0)
            return "0." + new string('0', -point) + digits;
        var exponent = (point - 1).ToString("+0;-0", CultureInfo.InvariantCulture);
        return digits.Length == 1 ? digits + "e" + exponent : digits[..1] + "." + digits[1..] + "e" + exponent;
    }
}
