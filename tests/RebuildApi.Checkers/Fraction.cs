using System.Numerics;

namespace RebuildApi.Checkers;

/// <summary>An exact fraction; the denominator is positive and is not reduced.</summary>
public readonly record struct Fraction(BigInteger Top, BigInteger Bottom) : IComparable<Fraction>
{
    public static Fraction Of(long whole) => new(whole, 1);

    public static Fraction operator +(Fraction a, Fraction b) => new((a.Top * b.Bottom) + (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Fraction operator -(Fraction a, Fraction b) => new((a.Top * b.Bottom) - (b.Top * a.Bottom), a.Bottom * b.Bottom);

    public static Fraction operator *(Fraction a, long factor) => new(a.Top * factor, a.Bottom);

    public Fraction Magnitude => new(BigInteger.Abs(Top), Bottom);

    /// <summary>⌊this / divisor⌋ for a positive divisor.</summary>
    public BigInteger FloorOver(long divisor)
    {
        var quotient = BigInteger.DivRem(Top, Bottom * divisor, out var rest);
        return rest.Sign < 0 ? quotient - 1 : quotient;
    }

    public int CompareTo(Fraction other) => (Top * other.Bottom).CompareTo(other.Top * Bottom);
}
