using System.Numerics;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>Exact sums of lengths with rational coefficients: Σ (numerator / denominator) × length.</summary>
internal static class Ratio
{
    /// <summary>The sum, rounded once at the end to the nearest nanometre (halves go away from zero).</summary>
    /// <exception cref="OverflowException">The sum is longer than can be kept.</exception>
    public static Length Sum(IEnumerable<(int Numerator, int Denominator, Length Of)> terms)
    {
        var (top, bottom) = (BigInteger.Zero, BigInteger.One);
        foreach (var (numerator, denominator, of) in terms)
        {
            top = (top * denominator) + (new BigInteger(numerator) * of.Nanometres * bottom);
            bottom *= denominator;
        }

        return new Length((long)RoundedQuotient(top, bottom));
    }

    /// <summary>One length times a coefficient.</summary>
    public static Length Times(Term term, Length of) => Sum([(term.Numerator, term.Denominator, of)]);

    /// <summary>The smallest whole multiple of a step that is not below a length; a step of zero leaves the length as it is.</summary>
    public static Length UpTo(Length step, Length value)
    {
        if (step <= Length.Zero)
            return value;
        var rest = value.Nanometres % step.Nanometres;
        if (rest == 0)
            return value;
        return new Length(value.Nanometres - rest + (value > Length.Zero ? step.Nanometres : 0));
    }

    /// <summary>The largest whole multiple of a step that is not above a length that is not negative.</summary>
    public static Length DownTo(Length step, Length value) =>
        step <= Length.Zero ? value : new Length(value.Nanometres - (value.Nanometres % step.Nanometres));

    private static BigInteger RoundedQuotient(BigInteger top, BigInteger bottom)
    {
        var half = BigInteger.Abs(top * 2) + bottom;
        return top.Sign * (half / (bottom * 2));
    }
}
