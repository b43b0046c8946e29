using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Statistics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A crossed gauge study: every appraiser read every part the same number of times.</summary>
/// <param name="Dimension">What is measured.</param>
/// <param name="Readings">The readings.</param>
/// <param name="Method">Analysis of variance, or average and range.</param>
/// <param name="Tolerance">Width of the limits that the gauge is to serve.</param>
/// <param name="PoolAbove">p above which the interaction is pooled; 0.25 is customary.</param>
public sealed record GaugeStudyRequest(
    [Entries(8, 2000)] ImmutableArray<GaugeReadingRequest> Readings,
    Dimension Dimension = Dimension.Length,
    [OneOf("anova", "average-and-range")] string Method = "anova",
    SentQuantity? Tolerance = null,
    [Between(0, 1)] decimal PoolAbove = 0.25m);

/// <summary>One reading of a gauge study.</summary>
/// <param name="Appraiser">The person, bench or instrument.</param>
/// <param name="Part">The part.</param>
/// <param name="Reading">The reading.</param>
public sealed record GaugeReadingRequest([Words(100)] string Appraiser, [Words(100)] string Part, SentQuantity Reading);

/// <summary>What a gauge study found: standard deviations and what they mean.</summary>
/// <param name="Repeatability">One appraiser, one part, again and again.</param>
/// <param name="Reproducibility">Between appraisers.</param>
/// <param name="Interaction">Appraisers differing from part to part; 0 when pooled or not seen.</param>
/// <param name="Gauge">Everything that is not the parts.</param>
/// <param name="PartVariation">Between parts.</param>
/// <param name="Total">Gauge and parts together.</param>
/// <param name="PercentOfStudy">Gauge in percent of the total.</param>
/// <param name="PercentContribution">The same of the variances.</param>
/// <param name="DistinctCategories">How many sizes of part the gauge can tell apart; absent when it has no variation at all.</param>
/// <param name="PercentOfTolerance">Six times the gauge in percent of the tolerance.</param>
/// <param name="FitFor">How far the gauge can be trusted against that tolerance: <c>good</c>, <c>conditional</c>, <c>not-fit</c>.</param>
/// <param name="RepeatabilityFreedom">Degrees of freedom behind the repeatability.</param>
/// <param name="Table">The analysis of variance.</param>
/// <param name="NegativeVariances">Components whose estimate was negative and is taken as 0.</param>
/// <param name="RangesOutOfControl">For average and range: how many ranges exceed their control limit.</param>
/// <param name="Sheet">For average and range: what it was worked out from.</param>
public sealed record GaugeStudyWire(
    QuantityWire Repeatability,
    QuantityWire Reproducibility,
    QuantityWire Interaction,
    QuantityWire Gauge,
    QuantityWire PartVariation,
    QuantityWire Total,
    double? PercentOfStudy,
    double? PercentContribution,
    int? DistinctCategories,
    double? PercentOfTolerance,
    string? FitFor,
    double? RepeatabilityFreedom,
    ImmutableArray<AnovaLineWire> Table,
    ImmutableArray<string> NegativeVariances,
    int RangesOutOfControl,
    AverageRangeSheetWire? Sheet)
{
    /// <summary>From the engine; deviations in SI.</summary>
    public static GaugeStudyWire From(GaugeStudyResult r, Dimension dimension, double? tolerance, Display show) => new(
        show.Difference(r.Repeatability, dimension),
        show.Difference(r.Reproducibility, dimension),
        show.Difference(r.Interaction, dimension),
        show.Difference(r.Gauge, dimension),
        show.Difference(r.PartVariation, dimension),
        show.Difference(r.Total, dimension),
        Numbers.Finite(r.PercentOfStudy),
        Numbers.Finite(r.PercentContribution),
        r.DistinctCategories == int.MaxValue ? null : r.DistinctCategories,
        tolerance is { } width ? Numbers.Finite(r.PercentOfTolerance(width)) : null,
        tolerance is { } limits ? r.FitFor(limits) : null,
        Numbers.Finite(r.RepeatabilityFreedom),
        [.. r.Table.Select(l => new AnovaLineWire(l.Source, l.Freedom, Numbers.Finite(l.F), Numbers.Finite(l.P)))],
        r.NegativeVariances,
        r.RangesOutOfControl,
        r.Sheet is { } sheet ? AverageRangeSheetWire.From(sheet, dimension, show) : null);
}

/// <summary>What stands on the sheet of a study by average and range.</summary>
/// <param name="MeanRanges">Mean range of each appraiser, in the order of their names.</param>
/// <param name="MeanRange">Mean of all ranges.</param>
/// <param name="AppraiserSpread">Largest mean of an appraiser less the smallest.</param>
/// <param name="PartSpread">Largest mean of a part less the smallest.</param>
/// <param name="RangeLimit">Upper control limit of the ranges.</param>
public sealed record AverageRangeSheetWire(
    ImmutableArray<QuantityWire> MeanRanges, QuantityWire MeanRange, QuantityWire AppraiserSpread, QuantityWire PartSpread, QuantityWire RangeLimit)
{
    /// <summary>From the engine.</summary>
    public static AverageRangeSheetWire From(AverageRangeSheet s, Dimension dimension, Display show) => new(
        [.. s.MeanRanges.Select(r => show.Difference(r, dimension))],
        show.Difference(s.MeanRange, dimension),
        show.Difference(s.AppraiserSpread, dimension),
        show.Difference(s.PartSpread, dimension),
        show.Difference(s.RangeLimit, dimension));
}

/// <summary>A line of an analysis of variance.</summary>
/// <param name="Source">Where the variation comes from.</param>
/// <param name="Freedom">Degrees of freedom.</param>
/// <param name="F">Ratio against the line it is tested by.</param>
/// <param name="P">Chance of such a ratio when there is no effect.</param>
public sealed record AnovaLineWire(string Source, int Freedom, double? F, double? P);
