using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Measuring;

/// <summary>Readings of one characteristic → the statistic that is judged, with its standard uncertainty.</summary>
internal static class MeasuredEstimate
{
    /// <summary>What the readings say of a statistic; <see cref="EstimateBasis.None"/> when there are none.</summary>
    public static Estimate Of(ReadingSet readings, Statistic report)
    {
        if (readings.Count == 0)
            return new Estimate(null, 0, null, null, null, EstimateBasis.None, []);
        var (low, high) = ReadingBounds.Of(readings, report);
        var value = Valued(readings, report);
        if (value is null || value.Point < low || value.Point > high)
            return Bounded(readings, low, high);
        var scale = readings.Scale;
        return Budget.Estimate(scale.Quantity(value.Point), EstimateBasis.Measured, value.Lines(readings), Quantity(scale, low), Quantity(scale, high));
    }

    private static ReadStatistic? Valued(ReadingSet readings, Statistic report) =>
        readings.Values.IsEmpty ? null : ReadStatistic.Of(readings.Values, report, readings.Scale);

    private static Estimate Bounded(ReadingSet readings, double? low, double? high)
    {
        var gauge = readings.Bounds.Max(b => b.LimitUncertainty) * readings.Scale.InSi;
        return Budget.Estimate(
            null,
            EstimateBasis.Measured,
            [new Contribution("limit-of-error", gauge, null, 0)],
            Quantity(readings.Scale, low),
            Quantity(readings.Scale, high));
    }

    private static Quantity? Quantity(Scale scale, double? point) => point is { } p ? scale.Quantity(p) : null;
}
