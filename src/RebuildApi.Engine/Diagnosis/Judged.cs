using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>What stands where a family does not say: wide judgements, common practice, no source.</summary>
public static class Judged
{
    /// <summary>A symptom with none of the family's causes behind it.</summary>
    public static Likelihood Leak { get; } = new(0.01, 0.03, 0.08);

    /// <summary>A symptom worded wider or narrower than it comes.</summary>
    public static Likelihood Loosely { get; } = new(0.3, 0.5, 0.7);

    /// <summary>A sign where its cause is there.</summary>
    public static Likelihood Found { get; } = new(0.5, 0.7, 0.9);

    /// <summary>A sign where none of its causes is there.</summary>
    public static Likelihood Otherwise { get; } = new(0.01, 0.03, 0.08);

    /// <summary>How many units a prior is worth.</summary>
    public const double PriorStrength = 20;

    /// <summary>Minutes to look for a sign, or to read it.</summary>
    public static decimal Minutes(Sign sign) => sign.Minutes ?? (sign is VerdictSign ? 6 : 2);
}
