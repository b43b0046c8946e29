using System.Globalization;
using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>
/// A length, or a difference of lengths, as a whole number of nanometres. Exact: 0.0001 in is 2540 nm, sums do not depend on their order,
/// and a value that equals the end of a window is inside it.
/// </summary>
/// <remarks>Zero is the default. Signed: a negative gap is an overlap or a preload. Range about ±9.2 million kilometres; overflow throws.</remarks>
/// <param name="Nanometres">Whole nanometres.</param>
[JsonConverter(typeof(LengthJsonConverter))]
public readonly record struct Length(long Nanometres) : IComparable<Length>
{
    private const long PerMicrometre = 1_000;
    private const long PerMillimetre = 1_000_000;
    private const long PerInch = 25_400_000;

    /// <summary>No length at all.</summary>
    public static Length Zero => default;

    /// <summary>A length given in millimetres, to at most six decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value has a digit beyond the nanometre, or overflows.</exception>
    public static Length Millimetres(decimal value) => Exactly(value, PerMillimetre, "mm");

    /// <summary>A length given in micrometres, to at most three decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value has a digit beyond the nanometre, or overflows.</exception>
    public static Length Micrometres(decimal value) => Exactly(value, PerMicrometre, "um");

    /// <summary>A length given in inches of exactly 25.4 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value has a digit beyond the nanometre, or overflows.</exception>
    public static Length Inches(decimal value) => Exactly(value, PerInch, "in");

    /// <summary>The length in millimetres, exact.</summary>
    [JsonIgnore]
    public decimal InMillimetres => Nanometres / (decimal)PerMillimetre;

    /// <summary>The length in inches, to the 28 digits of a decimal.</summary>
    [JsonIgnore]
    public decimal InInches => Nanometres / (decimal)PerInch;

    /// <summary>The length in metres, as a double for estimates.</summary>
    [JsonIgnore]
    public double InMetres => Nanometres * 1e-9;

    /// <summary>The nearest whole nanometre to an estimate in metres; halves go away from zero.</summary>
    /// <exception cref="OverflowException">The estimate is not a number, or out of range.</exception>
    public static Length NearestToMetres(double metres) => new(checked((long)Math.Round(metres * 1e9, MidpointRounding.AwayFromZero)));

    /// <summary>The sum.</summary>
    public static Length operator +(Length a, Length b) => new(a.Nanometres + b.Nanometres);

    /// <summary>The difference.</summary>
    public static Length operator -(Length a, Length b) => new(a.Nanometres - b.Nanometres);

    /// <summary>The length with its sign turned.</summary>
    public static Length operator -(Length a) => new(-a.Nanometres);

    /// <summary>A whole multiple.</summary>
    public static Length operator *(int factor, Length a) => new(factor * a.Nanometres);

    /// <summary>Whether the first is shorter.</summary>
    public static bool operator <(Length a, Length b) => a.Nanometres < b.Nanometres;

    /// <summary>Whether the first is longer.</summary>
    public static bool operator >(Length a, Length b) => a.Nanometres > b.Nanometres;

    /// <summary>Whether the first is not longer.</summary>
    public static bool operator <=(Length a, Length b) => a.Nanometres <= b.Nanometres;

    /// <summary>Whether the first is not shorter.</summary>
    public static bool operator >=(Length a, Length b) => a.Nanometres >= b.Nanometres;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Nanometres.CompareTo(other.Nanometres);

    /// <summary>Millimetres with a point, whatever the culture: <c>62.05 mm</c>.</summary>
    public override string ToString() => InMillimetres.ToString("0.0#####", CultureInfo.InvariantCulture) + " mm";

    private static Length Exactly(decimal value, long perUnit, string unit)
    {
        decimal nanometres;
        try
        {
            nanometres = value * perUnit;
        }
        catch (OverflowException)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, $"{value} {unit} is longer than can be kept.");
        }

        if (decimal.Truncate(nanometres) != nanometres)
            throw new ArgumentOutOfRangeException(nameof(value), value, $"{value} {unit} has digits beyond the nanometre.");
        if (nanometres is > long.MaxValue or < long.MinValue)
            throw new ArgumentOutOfRangeException(nameof(value), value, $"{value} {unit} is longer than can be kept.");
        return new Length((long)nanometres);
    }
}
