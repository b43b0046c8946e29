using RebuildApi.Contracts;
using RebuildApi.Engine.Measuring;
using RebuildApi.Engine.MonteCarlo;
using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Conformity;

/// <summary>
/// Limits on a scale, and how sure it is that a value lies between them. The value is taken to be spread about its estimate as Student's t
/// with the estimate's degrees of freedom, times its standard uncertainty (JCGM 106:2012, clause 7, no prior knowledge).
/// </summary>
/// <param name="Low">The lowest point allowed, or none.</param>
/// <param name="High">The highest point allowed, or none.</param>
/// <param name="Uncertainty">Standard uncertainty on the scale; 0 makes everything exact.</param>
/// <param name="DegreesOfFreedom">Its degrees of freedom; none means infinite.</param>
internal sealed record Window(double? Low, double? High, double Uncertainty, double? DegreesOfFreedom)
{
    public static Window Of(Limits limits, Estimate value, Scale scale, MonteCarloResult? trials = null) =>
        new(scale.Of(limits.Low), scale.Of(limits.High), value.StandardUncertainty / scale.InSi, value.DegreesOfFreedom) { Trials = trials };

    /// <summary>How the value is spread about its estimate, where that is not as Student's t: the trials that found it, drawn in or out to the uncertainty.</summary>
    private MonteCarloResult? Trials { get; init; }

    /// <summary>The middle of a window with both ends.</summary>
    public double? Middle => Low + (High - Low) / 2;

    /// <summary>Whether a point itself lies in the window, ends included.</summary>
    public bool Contains(double point) => !(point < Low) && !(point > High);

    /// <summary>Chance that the true value lies below the low limit.</summary>
    public double ChanceBelow(double point) => Low is { } low ? Chance(low - point, point < low) : 0;

    /// <summary>Chance that the true value lies above the high limit.</summary>
    public double ChanceAbove(double point) => High is { } high ? Chance(point - high, point > high, above: true) : 0;

    /// <summary>Chance that the true value lies in the window.</summary>
    public double ChanceWithin(double point)
    {
        // One end close by is the usual case: its complement loses no digits in the tail that matters.
        return Math.Max(0, 1 - ChanceBelow(point) - ChanceAbove(point));
    }

    /// <summary>Distance to the nearest limit, positive inside, on the scale.</summary>
    public double Margin(double point) => Math.Min(point - Low ?? double.PositiveInfinity, High - point ?? double.PositiveInfinity);

    /// <summary>P(true value is beyond the limit), for a value that is <paramref name="beyond"/> the limit by that much.</summary>
    private double Chance(double beyond, bool isBeyond, bool above = false)
    {
        if (!(Uncertainty > 0))
            return isBeyond ? 1 : 0;
        var deviations = beyond / Uncertainty;
        if (Trials is null)
            return StudentT.Cdf(deviations, DegreesOfFreedom);
        return above
            ? Trials.ChanceWithin(Trials.Mean - deviations * Trials.StandardUncertainty, null)
            : Trials.ChanceWithin(null, Trials.Mean + deviations * Trials.StandardUncertainty);
    }
}
