using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Fits;

/// <summary>Limits and fits of ISO 286-1 and -2, 0 to 500 mm, letters d to h, j, js, k, m, n, p, r, s and their capitals, grades 1 to 12.</summary>
public static class IsoFits
{
    private static readonly Source Read = new(SourceKind.Published, "ISO 286-1, tables of standard tolerances and fundamental deviations");
    private static readonly Source Remembered = new(SourceKind.Published, "ISO 286-1, from memory: check against the standard before use");

    /// <summary>A hole: <c>H7</c>, <c>JS6</c>, <c>K7</c>.</summary>
    /// <param name="nominal">Over 0 up to and including 500 mm.</param>
    /// <param name="tolerance">Capital letter and grade.</param>
    /// <exception cref="ArgumentException">The class or the size is not in the tables.</exception>
    public static FitZone Hole(Length nominal, string tolerance)
    {
        var (letter, grade) = Parse(tolerance);
        var width = StandardTolerances.Of(nominal, grade);
        if (letter == "JS")
            return Zone(nominal, tolerance, letter, grade, -Half(width), Half(width));
        if (FundamentalDeviations.LowerHole(letter, nominal) is { } lower && IsCapital(letter))
            return Zone(nominal, tolerance, letter, grade, lower, lower + width);
        if (FundamentalDeviations.UpperHole(letter, nominal, grade) is { } upper && IsCapital(letter))
            return Zone(nominal, tolerance, letter, grade, upper - width, upper);
        throw new ArgumentException($"{tolerance} is not a hole of the tables.", nameof(tolerance));
    }

    /// <summary>A shaft: <c>g6</c>, <c>js5</c>, <c>k6</c>.</summary>
    /// <param name="nominal">Over 0 up to and including 500 mm.</param>
    /// <param name="tolerance">Small letter and grade.</param>
    /// <exception cref="ArgumentException">The class or the size is not in the tables.</exception>
    public static FitZone Shaft(Length nominal, string tolerance)
    {
        var (letter, grade) = Parse(tolerance);
        var width = StandardTolerances.Of(nominal, grade);
        if (letter == "js")
            return Zone(nominal, tolerance, letter, grade, -Half(width), Half(width));
        if (FundamentalDeviations.UpperShaft(letter, nominal) is { } upper)
            return Zone(nominal, tolerance, letter, grade, upper - width, upper);
        if (FundamentalDeviations.LowerShaft(letter, nominal, grade) is { } lower)
            return Zone(nominal, tolerance, letter, grade, lower, lower + width);
        throw new ArgumentException($"{tolerance} is not a shaft of the tables.", nameof(tolerance));
    }

    /// <summary>A fit: <c>H7</c> with <c>g6</c>.</summary>
    /// <inheritdoc cref="Hole"/>
    public static Fit Of(Length nominal, string hole, string shaft) => new(Hole(nominal, hole), Shaft(nominal, shaft));

    private static FitZone Zone(Length nominal, string tolerance, string letter, int grade, Length lower, Length upper)
    {
        var remembered = StandardTolerances.IsFromMemory(nominal, grade) || (letter is not ("js" or "JS") && FundamentalDeviations.IsFromMemory(letter, nominal));
        return new FitZone(nominal, tolerance, lower, upper, remembered ? Remembered : Read);
    }

    private static (string Letter, int Grade) Parse(string tolerance)
    {
        var letters = new string([.. tolerance.TakeWhile(char.IsAsciiLetter)]);
        return letters.Length > 0 && int.TryParse(tolerance[letters.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var grade)
            ? (letters, grade)
            : throw new ArgumentException($"{tolerance} is not a tolerance class: letters, then a grade.", nameof(tolerance));
    }

    private static bool IsCapital(string letter) => letter.All(char.IsAsciiLetterUpper);

    private static Length Half(Length width) => new(width.Nanometres / 2);
}
