using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A control chart from a time when the process was steady. Exactly one of subgroups and values.</summary>
/// <param name="Dimension">What is measured.</param>
/// <param name="Subgroups">Subgroups of one size.</param>
/// <param name="Values">Single values in the order of time.</param>
/// <param name="Spread">For subgroups: by their ranges or by their deviations.</param>
/// <param name="Sigmas">How many standard deviations the limits stand off; 3 is usual.</param>
/// <param name="Steady">How many of the first points the limits rest on; all when not said. The rest are watched.</param>
public sealed record ControlChartRequest(
    [Entries(2, 500)] ImmutableArray<SubgroupRequest>? Subgroups = null,
    [Entries(2, 2000)] ImmutableArray<SentQuantity>? Values = null,
    Dimension Dimension = Dimension.Length,
    [OneOf("range", "deviation")] string Spread = "range",
    [Between(1, 6)] decimal Sigmas = 3m,
    [Between(2, 2000)] int? Steady = null);

/// <summary>One subgroup.</summary>
/// <param name="Values">Its values.</param>
public sealed record SubgroupRequest([Entries(2, 25)] ImmutableArray<SentQuantity> Values);

/// <summary>A pair of charts with what they say.</summary>
/// <param name="Level">Means of subgroups, or single values.</param>
/// <param name="Spread">Ranges, deviations, or moving ranges.</param>
/// <param name="Sigma">Standard deviation within subgroups that the limits rest on.</param>
/// <param name="Count">How many subgroups or values they rest on.</param>
/// <param name="Signals">Points that do not look like chance.</param>
public sealed record ControlChartWire(ChartLineWire Level, ChartLineWire Spread, QuantityWire Sigma, int Count, ImmutableArray<ChartSignalWire> Signals)
{
    /// <summary>From the engine; values in SI.</summary>
    public static ControlChartWire From(ControlChart chart, ImmutableArray<double> levels, Dimension dimension, Display show) => new(
        new(show.Si(chart.Level.Centre, dimension), show.Si(chart.Level.Low, dimension), show.Si(chart.Level.High, dimension)),
        new(show.Difference(chart.Spread.Centre, dimension), show.Difference(chart.Spread.Low, dimension), show.Difference(chart.Spread.High, dimension)),
        show.Difference(chart.Sigma, dimension),
        chart.Count,
        [.. chart.Signals(levels).Select(s => new ChartSignalWire(s.Index, s.Code))]);
}

/// <summary>One chart: a centre with its limits.</summary>
/// <param name="Centre">Centre line.</param>
/// <param name="Low">Lower control limit.</param>
/// <param name="High">Upper control limit.</param>
public sealed record ChartLineWire(QuantityWire Centre, QuantityWire Low, QuantityWire High);

/// <summary>A point that does not look like chance.</summary>
/// <param name="Index">Which, from 0.</param>
/// <param name="Code"><c>beyond-limit</c> or <c>run-on-one-side</c>.</param>
public sealed record ChartSignalWire(int Index, string Code);
