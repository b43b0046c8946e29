using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>Quantities as a person reads them on a page: rounded for the eye, the exact ones stay in the answers of the service.</summary>
public static class Shown
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);

    /// <summary>A quantity with its unit.</summary>
    public static string Of(QuantityWire? quantity) => quantity is null ? "" : $"{Rounded(quantity)} {quantity.Unit}";

    /// <summary>A quantity of the engine, lengths in millimetres.</summary>
    public static string Of(Quantity? quantity) => quantity is null ? "" : Of(Metric.Of(quantity));

    /// <summary>A value with its expanded uncertainty (k = 2).</summary>
    public static string Of(EstimateWire? estimate) => estimate switch
    {
        null => "",
        { Value: { } value, StandardUncertainty: { } u } when Twice(u) is { } twice => $"{Rounded(value)} ± {twice} {value.Unit}",
        { Value: { } value } => Of(value),
        { Low: { } low, High: { } high } => $"{Rounded(low)} … {Of(high)}",
        { Low: { } low } => $"≥ {Of(low)}",
        { High: { } high } => $"≤ {Of(high)}",
        _ => "",
    };

    /// <summary>A window.</summary>
    public static string Of(LimitsWire? limits) => limits switch
    {
        { Low: { } low, High: { } high } => $"{Rounded(low)} … {Of(high)}",
        { Low: { } low } => $"≥ {Of(low)}",
        { High: { } high } => $"≤ {Of(high)}",
        _ => "",
    };

    private static string Rounded(QuantityWire quantity) =>
        decimal.TryParse(quantity.Value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? value.ToString(quantity.Unit == "mm" ? "0.000#" : "0.####", CultureInfo.InvariantCulture)
            : quantity.Value.Text;

    private static string? Twice(QuantityWire u) =>
        decimal.TryParse(u.Value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0
            ? (2 * value).ToString("0.0000", CultureInfo.InvariantCulture)
            : null;
}
