using System.Globalization;

namespace RebuildApi.Families.Tests;

/// <summary>Instruments good enough that a value in the middle of a fit is beyond doubt.</summary>
internal static class Gauges
{
    public const string OfLength = "length-gauge";

    public static IEnumerable<InstrumentState> All =>
    [
        Gauge(OfLength, new Exact(Length.Micrometres(0.1m)), new Exact(Length.Micrometres(0.2m))),
        .. Enum.GetValues<Dimension>().Where(d => d != Dimension.Length).Select(d => Gauge(For(d), new Real(1e-4, d), new Real(1e-4, d))),
    ];

    public static string For(Dimension dimension) => dimension == Dimension.Length ? OfLength : $"{dimension}-gauge".ToLowerInvariant();

    public static Reading Reading(Quantity value) => value switch
    {
        Exact e => Contracts.Reading.Of(e.Value, e.Value.InMillimetres.ToString(CultureInfo.InvariantCulture), "mm"),
        _ => new Reading(null, null, value.InSi, value.InSi.ToString("R", CultureInfo.InvariantCulture), "si", null),
    };

    private static InstrumentState Gauge(string id, Quantity resolution, Quantity error) => new(id, "reference", resolution, error, ErrorModel.Rectangular, null);
}
