using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Wire.History;

/// <summary>How worn the incoming parts of one sort are.</summary>
/// <param name="Family">The family.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">What was read of it.</param>
/// <param name="Count">How many parts that were found in units were read.</param>
/// <param name="Mean">Mean.</param>
/// <param name="StandardDeviation">Standard deviation.</param>
/// <param name="Quantiles">5, 25, 50, 75 and 95 percent of them are at most this.</param>
/// <param name="BeyondLimit">Share beyond the service limits, where the family has some.</param>
/// <param name="Against">Those limits.</param>
/// <param name="Source">Where the methods come from.</param>
public sealed record WearWire(
    string Family,
    string Kind,
    string Characteristic,
    int Count,
    QuantityWire Mean,
    QuantityWire StandardDeviation,
    ImmutableArray<QuantileWire> Quantiles,
    ShareWire? BeyondLimit,
    LimitsWire? Against,
    string Source)
{
    /// <summary>From the engine; values in SI.</summary>
    public static WearWire From(string family, string kind, Characteristic characteristic, WearDistribution wear, Display show) => new(
        family,
        kind,
        characteristic.Id,
        wear.Summary.Count,
        show.Si(wear.Summary.Mean, characteristic.Dimension),
        show.Difference(wear.Summary.StandardDeviation, characteristic.Dimension),
        [.. wear.Quantiles.Select(q => new QuantileWire(100 * q.Key, show.Si(q.Value, characteristic.Dimension)))],
        wear.BeyondLimit is { } share ? ShareWire.From(share) : null,
        LimitsWire.From(characteristic.Service, show),
        "Hyndman and Fan, The American Statistician 50, 1996, type 7; Clopper and Pearson, Biometrika 26, 1934");
}

/// <summary>One quantile.</summary>
/// <param name="Percent">So many percent are at most the value.</param>
/// <param name="Value">The value.</param>
public sealed record QuantileWire(double Percent, QuantityWire Value);

/// <summary>A share counted on few cases, with its exact interval of 95 %.</summary>
/// <param name="Hits">How many.</param>
/// <param name="Of">Of how many.</param>
/// <param name="Share">The share.</param>
/// <param name="Low">Lower end of the interval.</param>
/// <param name="High">Upper end of the interval.</param>
public sealed record ShareWire(int Hits, int Of, double? Share, double? Low, double? High)
{
    /// <summary>From the engine.</summary>
    public static ShareWire From(Share s) => new(s.Hits, s.Of, Numbers.Finite(s.Value), Numbers.Finite(s.Low), Numbers.Finite(s.High));
}

/// <summary>A chart of single values over the units of the shop, in the order in which they were taken in.</summary>
/// <param name="Family">The family.</param>
/// <param name="Kind">The kind of part.</param>
/// <param name="Characteristic">What was read of it.</param>
/// <param name="Units">The unit of each point.</param>
/// <param name="Values">Each point.</param>
/// <param name="Chart">The chart.</param>
public sealed record HistoryChartWire(
    string Family, string Kind, string Characteristic, ImmutableArray<string> Units, ImmutableArray<QuantityWire> Values, ControlChartWire Chart);
