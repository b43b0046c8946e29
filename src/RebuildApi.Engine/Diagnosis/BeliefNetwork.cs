using System.Collections.Immutable;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>A network of variables that are yes or no, each with its table given its parents.</summary>
/// <param name="Variables">How many variables; they are numbered from 0.</param>
/// <param name="Tables">One for each variable.</param>
public sealed record BeliefNetwork(int Variables, ImmutableArray<Factor> Tables)
{
    /// <summary>How likely what was seen is, and each variable in the light of it.</summary>
    /// <param name="seen">Variable to what it was seen to be.</param>
    /// <exception cref="TooWideException">The network is too tightly knit for an exact answer.</exception>
    public Beliefs Given(IReadOnlyDictionary<int, bool> seen)
    {
        ImmutableArray<Factor> tables = [.. Tables, .. Enumerable.Range(0, Variables).Select(v => Asked(v, seen))];
        var run = new Elimination(EliminationPlan.Of([.. tables.Select(t => t.Scope)]), [.. tables.Select(t => t.Values.ToArray())]);
        return new Beliefs(run.Z, [.. Enumerable.Range(0, Variables).Select(v => Yes(v, seen, run))]);
    }

    private static Factor Asked(int variable, IReadOnlyDictionary<int, bool> seen) =>
        seen.TryGetValue(variable, out var yes) ? Factor.Seen(variable, yes) : new Factor([variable], [1, 1]);

    private double Yes(int variable, IReadOnlyDictionary<int, bool> seen, Elimination run) =>
        seen.TryGetValue(variable, out var yes) ? (yes ? 1 : 0) : run.Slope(Tables.Length + variable, 1) / run.Z;
}

/// <summary>What a network believes in the light of what was seen.</summary>
/// <param name="Evidence">How likely what was seen is.</param>
/// <param name="Yes">How likely each variable is yes.</param>
public sealed record Beliefs(double Evidence, ImmutableArray<double> Yes);
