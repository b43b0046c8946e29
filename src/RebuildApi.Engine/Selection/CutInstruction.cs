using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>How to make one cut. A proposal until the readings before and after it are recorded; then the clearances are worked out again as built.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="At">The dimension that is cut.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="Change">The signed change of the dimension; negative where metal comes off.</param>
/// <param name="MayBeMore">How much more may come off before a clearance leaves its guarded window or a limit of the face is passed.</param>
/// <param name="MayBeLess">How much less may come off.</param>
/// <param name="Before">The dimension as it is, where it was read.</param>
/// <param name="After">What it is to be.</param>
/// <param name="Touches">Every clearance that the cut changes, with the gap it is to have.</param>
/// <param name="RemeasureGate">Characteristics to read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="Reasons">Why this much, and that the person at the machine decides.</param>
public sealed record CutInstruction(
    string Operation,
    Address At,
    string Datum,
    Length Change,
    Length MayBeMore,
    Length MayBeLess,
    Length? Before,
    Length? After,
    ImmutableArray<SelectionGap> Touches,
    ImmutableArray<string> RemeasureGate,
    ImmutableArray<Text> Cautions,
    ImmutableArray<Reason> Reasons);
