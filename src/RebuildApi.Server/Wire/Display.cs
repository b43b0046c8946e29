using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Quantities;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>In which units an answer shows its quantities.</summary>
/// <param name="Inches">Whether lengths are in inches rather than millimetres.</param>
/// <param name="AsSent">Whether readings are shown as they were sent.</param>
public sealed record Display(bool Inches, bool AsSent)
{
    private const string Culture = "en";

    /// <summary>From the query parameter.</summary>
    public static Display For(string? units) => new(units == "in", units is null);

    /// <summary>The words of a text.</summary>
    public string Words(Text text) => text.In(Culture);

    /// <summary>A length, exact in millimetres, to 8 decimals in inches (a quarter of a nanometre).</summary>
    public QuantityWire Length(Length length) => Inches
        ? new QuantityWire(Number(Math.Round(length.InInches, 8)), "in")
        : new QuantityWire(Number(length.InMillimetres), "mm");

    /// <summary>An estimated length given in metres.</summary>
    public QuantityWire Metres(double metres) => Inches
        ? new QuantityWire(Number(metres / 0.0254), "in")
        : new QuantityWire(Number(metres * 1000), "mm");

    /// <summary>Any quantity.</summary>
    public QuantityWire Of(Quantity quantity) => quantity is Exact exact ? Length(exact.Value) : Si(quantity.InSi, quantity.Kind);

    /// <summary>A length that may be missing.</summary>
    public QuantityWire? LengthMaybe(Length? length) => length is { } known ? Length(known) : null;

    /// <summary>Any quantity that may be missing.</summary>
    public QuantityWire? OfMaybe(Quantity? quantity) => quantity is null ? null : Of(quantity);

    /// <summary>An estimate in SI.</summary>
    public QuantityWire Si(double si, Dimension dimension)
    {
        if (dimension == Dimension.Length)
            return Metres(si);
        var unit = ShopUnit(dimension);
        return new QuantityWire(Number(unit.FromSi(si)), unit.Symbol);
    }

    /// <summary>An uncertainty or a difference in SI: like <see cref="Si"/>, but a temperature difference has no zero point.</summary>
    public QuantityWire Difference(double si, Dimension dimension) =>
        dimension == Dimension.Temperature ? new QuantityWire(Number(si), "K") : Si(si, dimension);

    /// <summary>An estimate of something that has no dimension of its own here: a pressure, a power, a time.</summary>
    public static QuantityWire In(double value, string unit) => new(Number(value), unit);

    private static RealUnit ShopUnit(Dimension dimension)
    {
        var units = UnitCatalogue.All.OfType<RealUnit>().Where(u => u.Dimension == dimension);
        return dimension == Dimension.Mass ? units.First(u => u.Ucum == "kg") : units.First();
    }

    private static SentNumber Number(decimal value) => new(value.ToString("0.############", CultureInfo.InvariantCulture));

    // Nine digits: more than any gauge gives, few enough that rounding noise of binary arithmetic does not show.
    private static SentNumber Number(double value) => new(
        double.IsFinite(value) ? Plain(value) : throw new NotFiniteNumberException("The result is too large to be written.", value));

    private static string Plain(double value)
    {
        var rounded = double.Parse(value.ToString("G9", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Math.Abs(rounded) is > 0 and (< 1e-9 or > 1e15)
            ? rounded.ToString("R", CultureInfo.InvariantCulture)
            : ((decimal)rounded).ToString("0.##################", CultureInfo.InvariantCulture);
    }
}
