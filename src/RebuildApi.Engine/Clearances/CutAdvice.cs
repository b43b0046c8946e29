using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>One permitted cut that would help a clearance: a proposal until it is made and the part is read again.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="At">The dimension that it changes.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="ToEnter">Metal to remove, at least, to get into the window at all; a whole number of steps.</param>
/// <param name="ToTarget">Metal to remove, at least, to reach the wanted gap; a whole number of steps.</param>
/// <param name="IsLowerBound">Whether the true amount may be larger: cut, trial, read again; the wanted gap is not promised.</param>
/// <param name="Largest">The most that may come off by the face's own limits, or none when that is not known.</param>
/// <param name="Permission">Whether the face's own limits permit it.</param>
/// <param name="Touches">Every clearance that the cut changes, this one included.</param>
/// <param name="RemeasureGate">Characteristics to read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="Reasons">Why.</param>
public sealed record CutAdvice(
    string Operation,
    Address At,
    string Datum,
    Length ToEnter,
    Length ToTarget,
    bool IsLowerBound,
    Length? Largest,
    CutPermission Permission,
    ImmutableArray<LoopTouched> Touches,
    ImmutableArray<string> RemeasureGate,
    ImmutableArray<Text> Cautions,
    ImmutableArray<Reason> Reasons);

/// <summary>Whether a cut may be made.</summary>
public enum CutPermission
{
    /// <summary>What limits it is not known: the part, or its hardened layer, was not read.</summary>
    NotAssessed,

    /// <summary>Both amounts are within the limits.</summary>
    Permitted,

    /// <summary>Enough may come off to get into the window, not enough to reach the wanted gap.</summary>
    ToEnterOnly,

    /// <summary>Too little may come off.</summary>
    Refused,
}

/// <summary>A clearance that a cut changes.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Change">How much its gap changes when the cut for the wanted gap is made; signed.</param>
/// <param name="Now">The gap by parts now, where all are known.</param>
/// <param name="After">The gap by parts after the cut.</param>
/// <param name="Outcome">That gap against its window, as a plain value; not assessed when it is not known or a piece is still to be chosen.</param>
public sealed record LoopTouched(string Loop, Length Change, Length? Now, Length? After, Outcome Outcome);
