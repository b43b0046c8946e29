using System.Collections.Immutable;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>
/// A table over variables that are yes or no. The value at an index belongs to the state in which variable <c>Scope[j]</c> is yes exactly when bit
/// <c>j</c> of the index is set. Values may be negative: only their sum of products has to be a probability.
/// </summary>
/// <param name="Scope">The variables; no variable twice.</param>
/// <param name="Values">2 to the power of the number of variables.</param>
public sealed record Factor(ImmutableArray<int> Scope, ImmutableArray<double> Values)
{
    /// <summary>How likely a variable without parents is yes.</summary>
    public static Factor Prior(int variable, double yes) => new([variable], [1 - yes, yes]);

    /// <summary>That a variable was seen to be yes or no.</summary>
    public static Factor Seen(int variable, bool yes) => new([variable], yes ? [0, 1] : [1, 0]);

    /// <summary>
    /// How likely a variable is yes for each state of its parents: the entry at an index belongs to the state in which parent <c>j</c> is yes exactly
    /// when bit <c>j</c> is set.
    /// </summary>
    public static Factor Given(int variable, ImmutableArray<int> parents, ImmutableArray<double> yes) =>
        new([.. parents, variable], [.. yes.Select(p => 1 - p), .. yes]);
}
