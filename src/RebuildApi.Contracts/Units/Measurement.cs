using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>Raw readings of one characteristic of one revision of a part. Never edited, only superseded.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">The revision it was taken of.</param>
/// <param name="Characteristic">Id of the kind's characteristic.</param>
/// <param name="Readings">At least one.</param>
/// <param name="Taken">How, by whom and when.</param>
/// <param name="Supersedes">The measurement it corrects, if any.</param>
public sealed record Measurement(
    string Id,
    string Component,
    int Revision,
    string Characteristic,
    ImmutableArray<Reading> Readings,
    Taken Taken,
    string? Supersedes);
