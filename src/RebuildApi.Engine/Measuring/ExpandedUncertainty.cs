using RebuildApi.Engine.Numerics;

namespace RebuildApi.Engine.Measuring;

/// <summary>U = k·u for a coverage probability (JCGM 100:2008, 6.3 and G.6.4).</summary>
/// <param name="Coverage">The probability with which the interval ± U holds the value.</param>
/// <param name="DegreesOfFreedom">Whole degrees of freedom that k was taken for; null for infinite.</param>
/// <param name="Factor">k.</param>
/// <param name="Uncertainty">U, in the unit of u.</param>
public sealed record ExpandedUncertainty(double Coverage, int? DegreesOfFreedom, double Factor, double Uncertainty)
{
    /// <summary>Expands a standard uncertainty.</summary>
    /// <param name="standardUncertainty">u.</param>
    /// <param name="effectiveDegreesOfFreedom">ν_eff as computed, null for infinite. It is cut down to a whole number, never rounded up.</param>
    /// <param name="coverage">Coverage probability, 0..1 excluded.</param>
    public static ExpandedUncertainty Of(double standardUncertainty, double? effectiveDegreesOfFreedom, double coverage = 0.95)
    {
        if (coverage is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "A coverage probability lies between 0 and 1.");
        var whole = Whole(effectiveDegreesOfFreedom);
        var factor = StudentT.Quantile((1 + coverage) / 2, whole);
        return new ExpandedUncertainty(coverage, whole, factor, factor * standardUncertainty);
    }

    /// <summary>Cut down after rounding to the one decimal that ν_eff is stated with, so that 18.9987, stated as 19.0, stays 19.</summary>
    private static int? Whole(double? freedom) =>
        freedom is { } nu && nu < int.MaxValue ? Math.Max(1, (int)Math.Floor(Math.Round(nu, 1))) : null;
}
