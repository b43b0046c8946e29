using RebuildApi.Contracts;

namespace RebuildApi.Engine.Conformity;

/// <summary>The shop's decision rule applied to a point and a window.</summary>
internal static class Decision
{
    public static Outcome Of(double point, Window window, Policy policy) => policy.Decision switch
    {
        DecisionRule.SimpleAcceptance => window.Contains(point) ? Outcome.Conforming : Outcome.Nonconforming,
        DecisionRule.ProbabilityThreshold => window.ChanceWithin(point) >= policy.Probability ? Outcome.Conforming : Outcome.Nonconforming,
        _ => Guarded(point, window, policy.Probability),
    };

    /// <summary>
    /// Proven within, proven beyond one limit, or neither. Each limit has to be passed for sure by itself, so that a coarse instrument
    /// can be unsure but never condemns a part in the middle of its window (idea of ISO 14253-1: the zone of non-conformance is enlarged).
    /// </summary>
    private static Outcome Guarded(double point, Window window, double probability)
    {
        if (window.ChanceWithin(point) >= probability)
            return Outcome.Conforming;
        return window.ChanceBelow(point) >= probability || window.ChanceAbove(point) >= probability ? Outcome.Nonconforming : Outcome.Inconclusive;
    }
}
