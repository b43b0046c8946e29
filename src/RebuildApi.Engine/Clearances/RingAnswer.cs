using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>Which piece of a series brings one clearance right, all else as it is.</summary>
/// <param name="Series">The series.</param>
/// <param name="Position">Where the piece sits.</param>
/// <param name="Outcome">What the series can do.</param>
/// <param name="Ranked">The pieces, best first.</param>
/// <param name="Miss">By how much the best piece misses, when nothing fits.</param>
/// <param name="Cuts">What may be machined instead, when nothing fits.</param>
/// <param name="Reasons">Why.</param>
public sealed record RingAnswer(
    string Series,
    string Position,
    RingOutcome Outcome,
    ImmutableArray<RingChoice> Ranked,
    RingMiss? Miss,
    ImmutableArray<CutAdvice> Cuts,
    ImmutableArray<Reason> Reasons);

/// <summary>What a series can do for a clearance.</summary>
public enum RingOutcome
{
    /// <summary>Not enough is known.</summary>
    NotAssessed,

    /// <summary>The first piece of the list brings the gap surely inside the window.</summary>
    Fits,

    /// <summary>The first piece may do, but the uncertainty spans an end of the window: fit it, read the gap, or measure better.</summary>
    Doubtful,

    /// <summary>The gap is only bounded: fit the first piece of the list and read again.</summary>
    ReadAgain,

    /// <summary>No piece of the series can do it.</summary>
    NothingFits,
}

/// <summary>One piece, or pack of pieces, with what it does to the gap.</summary>
/// <param name="Members">Ids of the pieces.</param>
/// <param name="Thickness">Their nominal thickness together.</param>
/// <param name="Gap">What is known of the gap with them fitted.</param>
/// <param name="Outcome">That gap against the window.</param>
/// <param name="Probability">Chance that the gap is in the window.</param>
/// <param name="FromTarget">Distance from the wanted gap; none when the gap is only bounded.</param>
public sealed record RingChoice(
    ImmutableArray<string> Members, Length Thickness, Estimate Gap, Outcome Outcome, double? Probability, Length? FromTarget);

/// <summary>By how much the gap must grow (positive) or shrink (negative) before the nearest piece does it.</summary>
/// <param name="Members">The piece that comes nearest.</param>
/// <param name="ToEnter">The change that brings the gap to the nearer end of the window.</param>
/// <param name="ToTarget">The change that brings it to the wanted gap.</param>
/// <param name="IsLowerBound">Whether the true change is at least this and perhaps more: it was tight, so the shortfall is unknown.</param>
public sealed record RingMiss(ImmutableArray<string> Members, Length ToEnter, Length ToTarget, bool IsLowerBound);
