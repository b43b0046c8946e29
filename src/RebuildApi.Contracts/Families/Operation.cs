using System.Collections.Immutable;

namespace RebuildApi.Contracts;

/// <summary>A named piece of rework or assembly that the family permits.</summary>
/// <param name="Id">Lower case, digits and hyphens: <c>face-hub-front</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">The kind of part it is done to.</param>
/// <param name="Effects">What it does to characteristics; empty when it changes none (a clean-up, an assembly step).</param>
/// <param name="Mends">Damage classes that it removes: <c>burrs</c>.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="RemeasureGate">Characteristics that must be read again before the part goes on.</param>
public sealed record Operation(
    string Id,
    Text Name,
    string Kind,
    ImmutableArray<Effect> Effects,
    ImmutableArray<string> Mends,
    decimal Minutes,
    ImmutableArray<Text> Cautions,
    ImmutableArray<string> RemeasureGate);

/// <summary>A signed change of one characteristic. A cut is a negative one.</summary>
/// <param name="At">The characteristic, without a position.</param>
/// <param name="MinChange">The most negative change allowed.</param>
/// <param name="MaxChange">The most positive change allowed.</param>
/// <param name="Step">The finest step that can be worked to; positive.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="Remaining">What must remain afterwards, or none.</param>
/// <param name="ShareOfCaseDepth">The largest share of the hardened layer that may go, or none where the face has a limit of its own.</param>
public sealed record Effect(
    Address At,
    Length MinChange,
    Length MaxChange,
    Length Step,
    string Datum,
    Limits? Remaining,
    double? ShareOfCaseDepth);
