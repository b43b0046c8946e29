using System.Globalization;

namespace FamilyWords;

/// <summary>Words for the thicknesses that exist, thinnest first.</summary>
internal static class SeriesWords
{
    /// <summary>A series in inches; a member is called by its thickness in thousandths: <c>87</c>.</summary>
    public static Series InchSeries(string id, string kind, decimal tolerance, params decimal[] thicknesses) =>
        new(id, kind, [.. thicknesses.Select(t => new SeriesMember(Thousandths(t), Inch(t)))], Inch(tolerance), Demo);

    /// <summary>A series in millimetres; a member is called by its thickness in hundredths.</summary>
    public static Series MmSeries(string id, string kind, decimal tolerance, params decimal[] thicknesses) =>
        new(id, kind, [.. thicknesses.Select(t => new SeriesMember(Hundredths(t), Millimetre(t)))], Millimetre(tolerance), Demo);

    private static string Thousandths(decimal inches) => (inches * 1000).ToString("000.#", CultureInfo.InvariantCulture).Replace('.', '-');

    private static string Hundredths(decimal millimetres) => (millimetres * 100).ToString("000.#", CultureInfo.InvariantCulture).Replace('.', '-');
}
