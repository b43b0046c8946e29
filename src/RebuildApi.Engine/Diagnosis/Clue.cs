using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>Something that causes show themselves by: a symptom as it was worded, a test, a sign on the bench. A noisy-OR of its causes.</summary>
/// <param name="Id">Stable within a family and one question.</param>
/// <param name="Kind">What sort of clue.</param>
/// <param name="Look">What is looked at, read or tried to know it: several clues can be had from one look.</param>
/// <param name="Name">In words.</param>
/// <param name="Otherwise">How likely it is there although none of its causes is (the leak).</param>
/// <param name="Links">Its causes, and how likely each brings it.</param>
/// <param name="Stage">When it can be looked at.</param>
/// <param name="Minutes">What looking costs.</param>
public sealed record Clue(
    string Id, ClueKind Kind, string Look, string Name, Likelihood Otherwise, ImmutableArray<ClueLink> Links, TestStage Stage, decimal Minutes);

/// <summary>How likely a cause that is there brings a clue.</summary>
/// <param name="Cause">Index of the cause in the network.</param>
/// <param name="Shown">How likely, with its range.</param>
public sealed record ClueLink(int Cause, Likelihood Shown);

/// <summary>What sort of clue.</summary>
public enum ClueKind
{
    /// <summary>A complaint of the owner.</summary>
    Symptom,

    /// <summary>A test of the family.</summary>
    Test,

    /// <summary>An attribute of a part.</summary>
    Attribute,

    /// <summary>Damage on a part.</summary>
    Damage,

    /// <summary>A characteristic or clearance out of its limits.</summary>
    Verdict,
}

/// <summary>A clue that is known.</summary>
/// <param name="Clue">Which.</param>
/// <param name="Present">Whether it is there; known not to be there is evidence too.</param>
public sealed record ClueSeen(Clue Clue, bool Present);
