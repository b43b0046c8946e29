using RebuildApi.Contracts;

namespace RebuildApi.Engine.Conformity;

/// <summary>
/// What bounds alone decide: a value of at most 0 is below a limit of 0.254 mm whatever it is; one between both limits conforms whatever it is;
/// anything else is open.
/// </summary>
internal static class BoundDecision
{
    /// <param name="low">Known lower bound on the scale, or none.</param>
    /// <param name="high">Known upper bound on the scale, or none.</param>
    /// <param name="window">The limits.</param>
    /// <param name="policy">The rule; a bound is itself only known to the gauge's uncertainty.</param>
    public static Outcome Of(double? low, double? high, Window window, Policy policy)
    {
        var below = window with { High = null };
        var above = window with { Low = null };
        if (IsBeyond(high, below, policy) || IsBeyond(low, above, policy))
            return Outcome.Nonconforming;
        return IsWithin(low, below, policy) && IsWithin(high, above, policy) ? Outcome.Conforming : Outcome.Inconclusive;
    }

    private static bool IsBeyond(double? bound, Window side, Policy policy) =>
        bound is { } point && HasEnd(side) && Decision.Of(point, side, Strict(policy)) == Outcome.Nonconforming;

    private static bool IsWithin(double? bound, Window side, Policy policy) =>
        !HasEnd(side) || (bound is { } point && Decision.Of(point, side, policy) == Outcome.Conforming);

    private static bool HasEnd(Window side) => side.Low is not null || side.High is not null;

    /// <summary>A threshold rule has no room between; a bound beyond a limit must be so for sure.</summary>
    private static Policy Strict(Policy policy) =>
        policy.Decision == DecisionRule.ProbabilityThreshold ? policy with { Decision = DecisionRule.Guarded } : policy;
}
