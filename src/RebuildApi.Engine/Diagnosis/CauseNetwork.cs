using System.Collections.Frozen;
using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>The causes of a family with everything that shows them. Made once for a declaration and its priors; safe to share between threads.</summary>
public sealed class CauseNetwork
{
    private readonly Family _family;
    private readonly FrozenDictionary<string, Clue> _tests;

    /// <summary>Builds the network of a valid family.</summary>
    /// <param name="family">The declaration.</param>
    /// <param name="priors">Priors with counted units in them, where a person accepted some; what is left out stands as declared.</param>
    public CauseNetwork(Family family, IReadOnlyCollection<CausePrior>? priors = null)
    {
        _family = family;
        var accepted = (priors ?? []).ToDictionary(p => p.Cause, StringComparer.Ordinal);
        Causes = family.Causes;
        Priors = [.. family.Causes.Select(c => accepted.GetValueOrDefault(c.Id) ?? CausePrior.Of(c))];
        Ranges = [.. Priors.Select(p => p.Range())];
        Signs = SignClues.Signs(family);
        Tests = SignClues.Tests(family);
        _tests = Tests.ToFrozenDictionary(t => t.Look, StringComparer.Ordinal);
    }

    /// <summary>The causes, in the family's order.</summary>
    public ImmutableArray<Cause> Causes { get; }

    /// <summary>How common each is.</summary>
    public ImmutableArray<CausePrior> Priors { get; }

    /// <summary>The same with its range.</summary>
    public ImmutableArray<Likelihood> Ranges { get; }

    /// <summary>What can be found on the bench.</summary>
    public ImmutableArray<(Clue Clue, Sign Sign)> Signs { get; }

    /// <summary>What can be tried.</summary>
    public ImmutableArray<Clue> Tests { get; }

    /// <summary>The clue that a complaint is.</summary>
    /// <param name="seen">A symptom that the family knows.</param>
    public Clue Of(SymptomSeen seen) => SymptomClues.Of(seen, _family);

    /// <summary>The clue that a test is, or null when the family has no such test.</summary>
    public Clue? Test(string id) => _tests.GetValueOrDefault(id);
}
