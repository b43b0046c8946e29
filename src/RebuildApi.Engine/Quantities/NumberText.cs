using System.Globalization;
using System.Numerics;

namespace RebuildApi.Engine.Quantities;

/// <summary>A decimal number as it was written, kept exact: mantissa × 10^exponent. Nothing is rounded on the way in.</summary>
/// <param name="Mantissa">All digits as one whole number, signed, without trailing zeros.</param>
/// <param name="Exponent">Power of ten.</param>
public readonly record struct NumberText(BigInteger Mantissa, int Exponent)
{
    private const int LongestText = 64;
    private const int LargestExponent = 400;

    /// <summary>Reads a number in JSON's grammar (a point, no thousands separators, an exponent if need be).</summary>
    /// <returns>The number, or null when the text is none or is absurdly long.</returns>
    public static NumberText? TryRead(string text)
    {
        if (text.Length is 0 or > LongestText)
            return null;
        var exponentAt = text.AsSpan().IndexOfAny('e', 'E');
        var exponent = 0;
        if (exponentAt >= 0 && !int.TryParse(text.AsSpan(exponentAt + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out exponent))
            return null;
        var digits = exponentAt < 0 ? text : text[..exponentAt];
        var pointAt = digits.IndexOf('.', StringComparison.Ordinal);
        var decimals = pointAt < 0 ? 0 : digits.Length - pointAt - 1;
        if (pointAt >= 0)
            digits = digits.Remove(pointAt, 1);
        if (Math.Abs((long)exponent) > LargestExponent || (pointAt >= 0 && decimals == 0))
            return null;
        return BigInteger.TryParse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var mantissa)
            ? Normal(mantissa, exponent - decimals)
            : null;
    }

    /// <summary>The number times a whole factor, when that is a whole number in the range of a long; else null.</summary>
    public long? TimesWhole(long factor)
    {
        if (Mantissa.IsZero)
            return 0;
        var product = Mantissa * factor;
        if (Exponent >= 0)
            product *= BigInteger.Pow(10, Exponent);
        else
        {
            product = BigInteger.DivRem(product, BigInteger.Pow(10, -Exponent), out var rest);
            if (!rest.IsZero)
                return null;
        }

        return product >= long.MinValue && product <= long.MaxValue ? (long)product : null;
    }

    /// <summary>The nearest double; infinite when it is out of range.</summary>
    public double ToDouble() => double.Parse($"{Mantissa}e{Exponent.ToString(CultureInfo.InvariantCulture)}", CultureInfo.InvariantCulture);

    private static NumberText Normal(BigInteger mantissa, int exponent)
    {
        if (mantissa.IsZero)
            return new NumberText(BigInteger.Zero, 0);
        while (true)
        {
            var shorter = BigInteger.DivRem(mantissa, 10, out var digit);
            if (!digit.IsZero)
                return new NumberText(mantissa, exponent);
            (mantissa, exponent) = (shorter, exponent + 1);
        }
    }
}
