using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>What can be said of one clearance of a unit.</summary>
/// <param name="Verdict">The verdict at 20 °C on the gap with the pieces that count; not assessed while a piece is still to be chosen.</param>
/// <param name="IsWithoutPieces">Whether the values below are of the gap without the selective pieces that are not known yet.</param>
/// <param name="WorstLow">The smallest gap by parts that the tolerances allow.</param>
/// <param name="WorstHigh">The largest gap by parts that the tolerances allow.</param>
/// <param name="RootSumSquare">Statistical half-width of the gap by parts, metres.</param>
/// <param name="FromParts">The gap summed from the parts; none when one is not known.</param>
/// <param name="FromTrial">The gap by trial assembly, carried over to the pieces that count; none without one that still speaks for these parts.</param>
/// <param name="Combined">Both together, or the one there is; basis none when nothing is known.</param>
/// <param name="Trial">The readings of that trial assembly.</param>
/// <param name="Terms">The members with what each adds to the doubt.</param>
/// <param name="Alarm">Raised when parts and trial do not agree.</param>
/// <param name="Ring">Which piece brings it right, where exactly one is still open or could be changed.</param>
/// <param name="Thermal">The gap cold and hot, where the family asks.</param>
public sealed record ClearanceAnswer(
    Verdict Verdict,
    bool IsWithoutPieces,
    Length? WorstLow,
    Length? WorstHigh,
    double? RootSumSquare,
    Estimate? FromParts,
    Estimate? FromTrial,
    Estimate Combined,
    GapReading? Trial,
    ImmutableArray<TermValue> Terms,
    MixUp? Alarm,
    RingAnswer? Ring,
    ImmutableArray<ThermalGap> Thermal)
{
    /// <summary>What then happens, in the family's words, when the gap is outside its window; none otherwise.</summary>
    public Text? Consequence { get; init; }
}
