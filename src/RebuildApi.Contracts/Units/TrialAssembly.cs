using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A clearance read directly with exactly these parts and pieces fitted. It belongs to the loop, never to one part.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Loop">The clearance.</param>
/// <param name="Fitted">The parts that were fitted, with their revisions.</param>
/// <param name="Pieces">The selective pieces that were fitted.</param>
/// <param name="Load">The load it was read under, newtons, if one was applied.</param>
/// <param name="Gap">The readings; "tight" is a reading of at most 0.</param>
/// <param name="Taken">How, by whom and when.</param>
/// <param name="Supersedes">The trial it corrects, if any.</param>
public sealed record TrialAssembly(
    string Id,
    string Loop,
    ImmutableArray<FittedPart> Fitted,
    ImmutableArray<FittedPiece> Pieces,
    double? Load,
    ImmutableArray<Reading> Gap,
    Taken Taken,
    string? Supersedes);

/// <summary>A part that was in a trial assembly.</summary>
/// <param name="Position">Where.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">Its revision at the time.</param>
public sealed record FittedPart(string Position, string Component, int Revision);

/// <summary>A selective piece that was in a trial assembly.</summary>
/// <param name="Position">Where it sat.</param>
/// <param name="Series">Its series.</param>
/// <param name="Member">Which member it is sold as.</param>
/// <param name="Thickness">Its thickness as read; the nominal one when it was not.</param>
public sealed record FittedPiece(string Position, string Series, string Member, Length Thickness);
