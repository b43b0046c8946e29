namespace RebuildApi.Engine.Quantities;

/// <summary>
/// A decimal number of at most 18 digits without an exponent, read from UTF-8 without allocation: what nearly every row of a table has.
/// Anything longer or stranger goes through <see cref="NumberText"/>.
/// </summary>
/// <param name="Mantissa">All digits as one whole number, signed.</param>
/// <param name="Decimals">How many of them stand behind the point, 0..18.</param>
public readonly record struct ShortDecimal(long Mantissa, int Decimals)
{
    private const int MostDigits = 18;

    private static readonly long[] s_powers = [.. Enumerable.Range(0, MostDigits + 1).Select(i => (long)Math.Pow(10, i))];

    /// <summary>Reads <c>-?digits(.digits)?</c>.</summary>
    /// <returns>False when it is anything else.</returns>
    public static bool TryRead(ReadOnlySpan<byte> utf8, out ShortDecimal number)
    {
        number = default;
        var negative = utf8 is [(byte)'-', ..];
        var digits = negative ? utf8[1..] : utf8;
        if (digits.Length is 0 or > MostDigits + 1 || !char.IsAsciiDigit((char)digits[0]) || !char.IsAsciiDigit((char)digits[^1]))
            return false;
        long mantissa = 0;
        var point = -1;
        for (var i = 0; i < digits.Length; i++)
        {
            if (digits[i] == '.' && point < 0)
                point = i;
            else if (char.IsAsciiDigit((char)digits[i]))
                mantissa = (mantissa * 10) + (digits[i] - '0');
            else
                return false;
        }

        if (point < 0 && digits.Length > MostDigits)
            return false;
        number = new ShortDecimal(negative ? -mantissa : mantissa, point < 0 ? 0 : digits.Length - point - 1);
        return true;
    }

    /// <summary>The number times a whole factor, when that is a whole number in the range of a long.</summary>
    public bool TryTimes(long factor, out long whole)
    {
        var product = (Int128)Mantissa * factor;
        var (quotient, rest) = Int128.DivRem(product, s_powers[Decimals]);
        whole = rest == 0 && quotient >= long.MinValue && quotient <= long.MaxValue ? (long)quotient : 0;
        return rest == 0 && quotient >= long.MinValue && quotient <= long.MaxValue;
    }

    /// <summary>The nearest double: mantissa and power are both exact up to 15 digits, so that one division rounds once.</summary>
    public double ToDouble() => (double)Mantissa / s_powers[Decimals];

    /// <summary>One unit of the last digit.</summary>
    public double LastDigit => 1.0 / s_powers[Decimals];
}
