using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Pairings;

/// <summary>What one check, or all checks together, say of a pairing.</summary>
/// <param name="Outcome">The outcome.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Settles">What to look at or read so that a doubt goes away.</param>
internal sealed record Assessment(Compatibility Outcome, ImmutableArray<Reason> Reasons, ImmutableArray<Address> Settles)
{
    /// <summary>
    /// All checks together: the worst decides. Known to be wrong is worse than not known; not known is worse than a condition.
    /// No check at all is not assessed.
    /// </summary>
    public static Assessment Worst(IEnumerable<Assessment> checks)
    {
        var worstFirst = checks.OrderByDescending(c => Rank(c.Outcome)).ToArray();
        return worstFirst.Length == 0
            ? new Assessment(Compatibility.NotAssessed, [], [])
            : new Assessment(
                worstFirst[0].Outcome,
                [.. worstFirst.SelectMany(c => c.Reasons).DistinctBy(Shape)],
                [.. worstFirst.SelectMany(c => c.Settles).Distinct()]);
    }

    /// <summary>How bad an outcome is; greater is worse.</summary>
    public static int Rank(Compatibility outcome) => outcome switch
    {
        Compatibility.Compatible => 0,
        Compatibility.Conditional => 1,
        Compatibility.NotAssessed => 2,
        _ => 3,
    };

    private static string Shape(Reason reason) =>
        reason.Code + "|" + string.Join("|", reason.Arguments.OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => a.Key + "=" + a.Value));
}
