using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Clearances;

/// <summary>An alarm: parts and trial assembly do not agree, so something was read, written down or fitted wrongly.</summary>
/// <param name="Residual">Gap by trial assembly minus gap by parts.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the residual, metres.</param>
/// <param name="Likely">What would explain it, best first; empty when nothing simple does.</param>
public sealed record MixUp(Length Residual, double StandardUncertainty, ImmutableArray<MixUpCause> Likely)
{
    /// <summary>A residual beyond this many standard uncertainties raises the alarm (k = 2).</summary>
    public const double Coverage = 2;
}

/// <summary>One simple slip that would make parts and trial agree.</summary>
/// <param name="Slip">What may have happened.</param>
/// <param name="At">The address, the position of the piece, or the trial assembly.</param>
/// <param name="Written">What was written down: the number as sent, the member, or the component.</param>
/// <param name="Meant">What it probably was.</param>
/// <param name="Left">How much residual would be left.</param>
public sealed record MixUpCause(Slip Slip, string At, string Written, string Meant, Length Left);

/// <summary>Kinds of slip.</summary>
public enum Slip
{
    /// <summary>Two neighbouring digits changed places: 62.05 and 62.50.</summary>
    TransposedDigits,

    /// <summary>The thimble was read one turn out: 0.5 mm, or 0.025 in.</summary>
    ThimbleTurn,

    /// <summary>The piece in the trial was another member of its series.</summary>
    OtherPiece,

    /// <summary>The part is another one of its kind that is on the bench.</summary>
    OtherPart,
}
