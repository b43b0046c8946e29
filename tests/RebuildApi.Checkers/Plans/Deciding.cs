using RebuildApi.Contracts;

namespace RebuildApi.Checkers.Plans;

/// <summary>Which outcomes a value may come to in a window by the shop's rule. One, but where a chance lies on the threshold itself.</summary>
public static class Deciding
{
    // The checker integrates numerically; what lies nearer to a threshold than this may fall to either side.
    private const double Blur = 1e-4;

    public static IReadOnlySet<Outcome> Of(CheckedValue? value, Limits? window, Policy policy) =>
        Of(value, CheckedValue.Number(window?.Low), CheckedValue.Number(window?.High), policy);

    public static IReadOnlySet<Outcome> Of(CheckedValue? value, double? low, double? high, Policy policy) => value switch
    {
        null => new HashSet<Outcome> { Outcome.NotAssessed },
        { Point: null } => OfBounds(value, low, high),
        { Point: { } point } => new HashSet<Outcome> { Judge(value, point, low, high, policy, -Blur), Judge(value, point, low, high, policy, Blur) },
    };

    private static Outcome Judge(CheckedValue value, double point, double? low, double? high, Policy policy, double blur)
    {
        if (policy.Decision == DecisionRule.SimpleAcceptance)
            return point < low || point > high ? Outcome.Nonconforming : Outcome.Conforming;
        var (below, above) = (Beyond(low - point, point < low, value), Beyond(point - high, point > high, value));
        var wanted = policy.Probability + blur;
        if (1 - below - above >= wanted)
            return Outcome.Conforming;
        return policy.Decision == DecisionRule.ProbabilityThreshold || below >= wanted || above >= wanted ? Outcome.Nonconforming : Outcome.Inconclusive;
    }

    private static double Beyond(double? by, bool isBeyond, CheckedValue value) => by is not { } distance ? 0
        : value.U == 0 ? (isBeyond ? 1 : 0)
        : Student.ChanceBelow(distance / value.U, value.Freedom);

    /// <summary>Bounds alone condemn nothing that may lie inside, and accept nothing that may lie outside.</summary>
    private static HashSet<Outcome> OfBounds(CheckedValue value, double? low, double? high)
    {
        var outcomes = new HashSet<Outcome> { Outcome.Inconclusive, Outcome.NotAssessed };
        if (value.High < low || value.Low > high)
            outcomes.Add(Outcome.Nonconforming);
        if ((low is null || value.Low >= low) && (high is null || value.High <= high))
            outcomes.Add(Outcome.Conforming);
        return outcomes;
    }
}
