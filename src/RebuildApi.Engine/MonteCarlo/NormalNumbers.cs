using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace RebuildApi.Engine.MonteCarlo;

/// <summary>
/// Standard normal numbers from uniform ones, sixteen at a time, by Box and Muller (Annals of Mathematical Statistics 29, 1958):
/// √(−2 ln u)·cos 2πv and √(−2 ln u)·sin 2πv. Logarithm, sine and cosine are their power series over short intervals, to about 1 part in
/// 10¹⁵, in plain IEEE steps, so that every machine gives the same numbers.
/// </summary>
public static class NormalNumbers
{
    private const long OneInBits = 0x3FF0_0000_0000_0000;
    private const long RootOfHalfInBits = 0x3FE6_A09E_0000_0000;
    private const long FractionMask = 0x000F_FFFF_FFFF_FFFF;

    /// <summary>Turns uniform numbers within 0..1, ends excluded, into normal ones in place. The length is a multiple of 16.</summary>
    public static void FromUniforms(Span<double> values)
    {
        var half = values.Length / 2;
        ref var first = ref MemoryMarshal.GetReference(values);
        ref var second = ref Unsafe.Add(ref first, half);
        for (nuint i = 0; i < (nuint)half; i += 8)
        {
            var radius = Vector512.Sqrt(MinusTwiceLog(Vector512.LoadUnsafe(ref first, i)));
            var (cos, sin) = OfTurns(Vector512.LoadUnsafe(ref second, i));
            (radius * cos).StoreUnsafe(ref first, i);
            (radius * sin).StoreUnsafe(ref second, i);
        }
    }

    /// <summary>−2 ln u with u = 2ᵉ·m, m in √½..√2: ln m = 2 artanh((m − 1)/(m + 1)).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> MinusTwiceLog(Vector512<double> u)
    {
        var shifted = u.AsInt64() + Vector512.Create(OneInBits - RootOfHalfInBits);
        var exponent = Vector512.ConvertToDouble((shifted >> 52) - Vector512.Create(OneInBits >> 52));
        var m = ((shifted & Vector512.Create(FractionMask)) + Vector512.Create(RootOfHalfInBits)).AsDouble();
        var t = (m - Vector512<double>.One) / (m + Vector512<double>.One);
        var z = t * t;
        var series = Step(Step(Step(Step(Vector512.Create(1 / 19.0), z, 1 / 17.0), z, 1 / 15.0), z, 1 / 13.0), z, 1 / 11.0);
        series = Step(Step(Step(Step(Step(series, z, 1 / 9.0), z, 1 / 7.0), z, 1 / 5.0), z, 1 / 3.0), z, 1);
        return -Vector512.FusedMultiplyAdd(exponent, Vector512.Create(2 * 0.693147180559945309417), 4 * (series * t));
    }

    /// <summary>Cosine and sine of v turns: an angle within ±π/4 about the nearest quarter, then the quarter.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector512<double> Cos, Vector512<double> Sin) OfTurns(Vector512<double> v)
    {
        var quarters = v * 4.0;
        var quarter = Vector512.Round(quarters);
        var angle = (quarters - quarter) * (Math.PI / 2);
        var (cos, sin) = (Cosine(angle * angle), angle * SineOverAngle(angle * angle));
        var whole = Vector512.ConvertToInt64(quarter);
        var isOdd = Vector512.Equals(whole & Vector512<long>.One, Vector512<long>.One).AsDouble();
        var cosSign = ((whole + Vector512<long>.One) & Vector512.Create(2L)) << 62;
        var sinSign = (whole & Vector512.Create(2L)) << 62;
        return (
            (Vector512.ConditionalSelect(isOdd, sin, cos).AsInt64() ^ cosSign).AsDouble(),
            (Vector512.ConditionalSelect(isOdd, cos, sin).AsInt64() ^ sinSign).AsDouble());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> SineOverAngle(Vector512<double> z)
    {
        var series = Step(Step(Step(Vector512.Create(-1 / 1307674368000.0), z, 1 / 6227020800.0), z, -1 / 39916800.0), z, 1 / 362880.0);
        return Step(Step(Step(Step(series, z, -1 / 5040.0), z, 1 / 120.0), z, -1 / 6.0), z, 1);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Cosine(Vector512<double> z)
    {
        var series = Step(Step(Step(Vector512.Create(1 / 20922789888000.0), z, -1 / 87178291200.0), z, 1 / 479001600.0), z, -1 / 3628800.0);
        return Step(Step(Step(Step(Step(series, z, 1 / 40320.0), z, -1 / 720.0), z, 1 / 24.0), z, -1 / 2.0), z, 1);
    }

    /// <summary>One step of Horner's rule.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Step(Vector512<double> sum, Vector512<double> z, double next) =>
        Vector512.FusedMultiplyAdd(sum, z, Vector512.Create(next));
}
