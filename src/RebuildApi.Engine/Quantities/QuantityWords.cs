using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Quantities;

/// <summary>Quantities as a person reads them: both systems side by side for lengths, shop units for the rest.</summary>
public static class QuantityWords
{
    /// <summary>A length in millimetres and inches: <c>0.381 mm (0.0150 in)</c>.</summary>
    public static string Both(Length length) => $"{Millimetres(length)} ({Inches(length)})";

    /// <summary>A length in millimetres, to the tenth of a micrometre; two digits of what is smaller than a hundredth: <c>0.381 mm</c>, <c>0.0012 mm</c>.</summary>
    public static string Millimetres(Length length) => Shown(length.InMillimetres, 0.01m, "0.000#") + " mm";

    /// <summary>A length in inches, to the tenth of a thou; two digits of what is smaller than a thou: <c>0.0150 in</c>, <c>0.00005 in</c>.</summary>
    public static string Inches(Length length) => Shown(length.InInches, 0.001m, "0.0000") + " in";

    /// <summary>Any quantity.</summary>
    public static string Of(Quantity quantity) => quantity switch
    {
        Exact exact => Both(exact.Value),
        Real real => Of(real.Si, real.Dimension),
        _ => throw new InvalidOperationException("A quantity is exact or real."),
    };

    /// <summary>A value in SI in the unit that a shop reads.</summary>
    public static string Of(double si, Dimension dimension)
    {
        var unit = ShopUnit(dimension);
        var value = unit is RealUnit real ? real.FromSi(si) : si * 1000;
        return value.ToString("G4", CultureInfo.InvariantCulture) + (unit.Symbol is "1" or "count" ? "" : " " + unit.Symbol);
    }

    /// <summary>A difference of two values in SI: as <see cref="Of(double, Dimension)"/>, but a difference of temperatures is in kelvin.</summary>
    public static string OfDifference(double si, Dimension dimension) => dimension == Dimension.Temperature
        ? si.ToString("G4", CultureInfo.InvariantCulture) + " K"
        : Of(si, dimension);

    private static string Shown(decimal value, decimal small, string format) => Math.Abs(value) >= small || value == 0
        ? value.ToString(format, CultureInfo.InvariantCulture)
        : ((decimal)double.Parse(value.ToString("E1", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture);

    private static UnitOfMeasure ShopUnit(Dimension dimension) => dimension switch
    {
        Dimension.Temperature => UnitCatalogue.Find("Cel", dimension)!,
        Dimension.Mass => UnitCatalogue.Find("kg", dimension)!,
        _ => UnitCatalogue.All.First(u => u.Dimension == dimension),
    };
}
