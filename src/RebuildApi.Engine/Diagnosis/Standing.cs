using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>How a value stands to its limits.</summary>
public enum Standing
{
    /// <summary>Within them, surely enough.</summary>
    Within,

    /// <summary>Below the low one.</summary>
    Below,

    /// <summary>Above the high one.</summary>
    Above,

    /// <summary>Beyond one of them, which is not said.</summary>
    Beyond,
}

/// <summary>Reads standings from verdicts.</summary>
public static class Standings
{
    /// <summary>Standings by subject. Of several like parts the worst stands for all; what is not assessed or in doubt is left out.</summary>
    /// <param name="verdicts">Verdicts on characteristics and clearances.</param>
    public static ImmutableDictionary<string, Standing> Of(IEnumerable<Verdict> verdicts) => verdicts
        .GroupBy(v => WithoutIndex(v.Subject), StringComparer.Ordinal)
        .Select(same => (same.Key, Worst: same.MaxBy(v => Outcomes.Rank(v.Outcome))!))
        .Where(v => v.Worst.Outcome is Outcome.Conforming or Outcome.Nonconforming)
        .ToImmutableDictionary(v => v.Key, v => Of(v.Worst), StringComparer.Ordinal);

    private static Standing Of(Verdict verdict)
    {
        if (verdict.Outcome == Outcome.Conforming)
            return Standing.Within;
        var (value, limits) = (verdict.Value, verdict.Against);
        if ((value?.Value ?? value?.High)?.InSi < limits?.Low?.InSi)
            return Standing.Below;
        return (value?.Value ?? value?.Low)?.InSi > limits?.High?.InSi ? Standing.Above : Standing.Beyond;
    }

    // The second of several like parts is "keys-3-4#2/length".
    private static string WithoutIndex(string subject)
    {
        var mark = subject.IndexOf('#', StringComparison.Ordinal);
        var slash = subject.IndexOf('/', StringComparison.Ordinal);
        return mark < 0 ? subject : subject[..mark] + (slash > mark ? subject[slash..] : "");
    }
}
