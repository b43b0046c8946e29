using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Statistics;

/// <summary>What a gauge study found. Standard deviations are in the unit of the readings.</summary>
/// <param name="Repeatability">EV: one appraiser, one part, again and again.</param>
/// <param name="Reproducibility">AV: between appraisers.</param>
/// <param name="Interaction">Appraisers differing from part to part; 0 when it was pooled or the method cannot see it.</param>
/// <param name="PartVariation">PV: between parts.</param>
/// <param name="RepeatabilityFreedom">Degrees of freedom behind the repeatability.</param>
/// <param name="Table">The analysis of variance; empty for average and range.</param>
/// <param name="NegativeVariances">Components whose estimate was negative and is taken as 0.</param>
/// <param name="RangesOutOfControl">For average and range: how many ranges exceed their control limit.</param>
public sealed record GaugeStudyResult(
    double Repeatability,
    double Reproducibility,
    double Interaction,
    double PartVariation,
    double RepeatabilityFreedom,
    ImmutableArray<AnovaLine> Table,
    ImmutableArray<string> NegativeVariances,
    int RangesOutOfControl)
{
    /// <summary>The sheet that average and range works from; none for the analysis of variance.</summary>
    public AverageRangeSheet? Sheet { get; init; }

    // 1.41, as the customary count of distinct categories has it, not √2 (AIAG MSA 4th edition).
    private const double CategoriesFactor = 1.41;

    /// <summary>GRR: everything that is not the parts.</summary>
    public double Gauge => Math.Sqrt(Repeatability * Repeatability + Reproducibility * Reproducibility + Interaction * Interaction);

    /// <summary>TV: gauge and parts together.</summary>
    public double Total => Math.Sqrt(Gauge * Gauge + PartVariation * PartVariation);

    /// <summary>100·GRR/TV.</summary>
    public double PercentOfStudy => Percent(Gauge);

    /// <summary>100·GRR²/TV².</summary>
    public double PercentContribution => PercentOfStudy * PercentOfStudy / 100;

    /// <summary>ndc: how many sizes of part the gauge can tell apart, cut down to a whole number; at least 1.</summary>
    public int DistinctCategories => Gauge == 0 ? int.MaxValue : (int)Math.Max(1, Math.Min(int.MaxValue, Math.Floor(CategoriesFactor * PartVariation / Gauge)));

    /// <summary>The study as an instrument carries it into every budget.</summary>
    /// <param name="kind">The kind of part that was studied.</param>
    /// <param name="characteristic">The characteristic.</param>
    /// <param name="siPerUnit">SI units in one unit of the readings: 0.001 for millimetres.</param>
    public GaugeCapability Capability(string kind, string characteristic, double siPerUnit) => new(
        kind,
        characteristic,
        Repeatability * siPerUnit,
        Math.Sqrt(Reproducibility * Reproducibility + Interaction * Interaction) * siPerUnit,
        RepeatabilityFreedom);

    /// <summary>100 times a standard deviation over TV.</summary>
    public double Percent(double deviation) => Total == 0 ? 0 : 100 * deviation / Total;

    /// <summary>100·6·GRR over the width of the limits.</summary>
    public double PercentOfTolerance(double width) => 100 * 6 * Gauge / width;

    /// <summary>
    /// How far the gauge can be trusted against limits of that width: <c>good</c> below 10 %, <c>conditional</c> to 30 %, else
    /// <c>not-fit</c> (common practice, AIAG MSA).
    /// </summary>
    public string FitFor(double width) => PercentOfTolerance(width) switch
    {
        < 10 => "good",
        <= 30 => "conditional",
        _ => "not-fit",
    };
}

/// <summary>What stands on the sheet of a study by average and range.</summary>
/// <param name="MeanRanges">Mean range of each appraiser, in the order of their names.</param>
/// <param name="Means">Mean of each appraiser.</param>
/// <param name="MeanRange">R̄: mean of all ranges.</param>
/// <param name="AppraiserSpread">Largest mean of an appraiser less the smallest.</param>
/// <param name="PartSpread">Rp: largest mean of a part less the smallest.</param>
/// <param name="RangeLimit">Upper control limit of the ranges.</param>
public sealed record AverageRangeSheet(
    ImmutableArray<double> MeanRanges, ImmutableArray<double> Means, double MeanRange, double AppraiserSpread, double PartSpread, double RangeLimit);

/// <summary>A line of an analysis of variance.</summary>
/// <param name="Source"><c>appraiser</c>, <c>part</c>, <c>interaction</c>, <c>repeatability</c> or <c>total</c>.</param>
/// <param name="SumOfSquares">SS.</param>
/// <param name="Freedom">Degrees of freedom.</param>
/// <param name="F">Ratio against the line it is tested by, or none.</param>
/// <param name="P">Chance of such a ratio when there is no effect, or none.</param>
public sealed record AnovaLine(string Source, double SumOfSquares, int Freedom, double? F, double? P)
{
    /// <summary>MS.</summary>
    public double MeanSquare => SumOfSquares / Freedom;
}
