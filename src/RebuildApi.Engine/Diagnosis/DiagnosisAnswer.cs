using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Diagnosis;

/// <summary>What may lie behind a complaint, and what to look at next.</summary>
/// <param name="Causes">Every cause of the family: those that bring something that is there before the others, the likeliest first.</param>
/// <param name="Seen">The clues that it rests on.</param>
/// <param name="Unexplained">For each complaint how likely none of the family's causes is behind it.</param>
/// <param name="Checks">What to look at next, the most telling for its minutes first.</param>
/// <param name="Reasons">The same in short.</param>
public sealed record DiagnosisAnswer(
    ImmutableArray<RankedCause> Causes,
    ImmutableArray<ClueSeen> Seen,
    ImmutableArray<Unexplained> Unexplained,
    ImmutableArray<NextCheck> Checks,
    ImmutableArray<Reason> Reasons);

/// <summary>How likely one cause is there, and why.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Prior">How common it is, with counted units in it.</param>
/// <param name="PriorRange">The same with its range.</param>
/// <param name="Probability">How likely it is there in the light of what is known. Several causes may be there at once.</param>
/// <param name="Low">The least that it becomes when any one judged number goes to an end of its range.</param>
/// <param name="High">The most.</param>
/// <param name="HangsOn">The judged number that moves it most; none when none does.</param>
/// <param name="Weights">What each clue adds or takes, the heaviest first.</param>
/// <param name="Reasons">The same in words.</param>
public sealed record RankedCause(
    Cause Cause,
    CausePrior Prior,
    Likelihood PriorRange,
    double Probability,
    double Low,
    double High,
    HangsOn? HangsOn,
    ImmutableArray<ClueWeight> Weights,
    ImmutableArray<Reason> Reasons);

/// <summary>A judged number that a probability hangs on.</summary>
/// <param name="Clue">The clue it belongs to; none for a prior.</param>
/// <param name="Cause">The cause it belongs to; none for a clue without any of its causes.</param>
/// <param name="Range">The number with its range.</param>
public sealed record HangsOn(Clue? Clue, string? Cause, Likelihood Range);

/// <summary>What one clue says of one cause.</summary>
/// <param name="Clue">The clue.</param>
/// <param name="Present">Whether it is there.</param>
/// <param name="LogOdds">
/// Natural logarithm of the odds of the cause with everything that is known, less the same without this clue: positive speaks for it, negative against it.
/// </param>
public sealed record ClueWeight(Clue Clue, bool Present, double LogOdds)
{
    /// <summary>By how much the clue multiplies the odds.</summary>
    public double OddsFactor => Math.Exp(LogOdds);
}

/// <summary>How likely something else is behind a complaint.</summary>
/// <param name="Clue">The complaint.</param>
/// <param name="Probability">How likely none of the family's causes that bring it is there.</param>
public sealed record Unexplained(Clue Clue, double Probability);

/// <summary>Something to look at, to read or to try.</summary>
/// <param name="Clue">What it may show; of several things that one look may show, the one that tells most.</param>
/// <param name="Chance">How likely it shows.</param>
/// <param name="Bits">
/// Expected information: by how many bits the doubts about the causes that bring something that is there, each taken by itself, shrink on average (the
/// sum of the mutual information of the result with each); about all causes when nothing is there.
/// </param>
/// <param name="Saving">Expected saving in minor units, when costs are known.</param>
/// <param name="PerMinute">Bits for each minute; the saving for each minute when costs are known.</param>
/// <param name="Reasons">The same in words.</param>
public sealed record NextCheck(Clue Clue, double Chance, double Bits, double? Saving, double PerMinute, ImmutableArray<Reason> Reasons);
