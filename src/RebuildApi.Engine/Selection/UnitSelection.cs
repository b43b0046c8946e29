using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;

namespace RebuildApi.Engine.Selection;

/// <summary>Which rings, shims, washers and cuts bring the clearances of a unit right together.</summary>
/// <param name="Outcome">What can be done.</param>
/// <param name="Best">The proven best choice; when nothing fits, the one that comes nearest with pieces alone; none when nothing can be solved.</param>
/// <param name="Alternatives">The next best.</param>
/// <param name="Chances">The chance that all clearances lie in their windows together, for the best choice and each alternative in order.</param>
/// <param name="Cuts">Instructions for the cuts of the best choice.</param>
/// <param name="Misses">When nothing fits: each clearance that misses, what it misses by, and what could be machined for it.</param>
/// <param name="LeftOut">Clearances that could not be taken in, with why.</param>
/// <param name="Reasons">Why.</param>
public sealed record UnitSelection(
    SelectionOutcome Outcome,
    SelectionSolution? Best,
    ImmutableArray<SelectionSolution> Alternatives,
    ImmutableArray<double> Chances,
    ImmutableArray<CutInstruction> Cuts,
    ImmutableArray<LoopMiss> Misses,
    ImmutableArray<LoopLeftOut> LeftOut,
    ImmutableArray<Reason> Reasons);

/// <summary>What a selection can do for a unit.</summary>
public enum SelectionOutcome
{
    /// <summary>Nothing could be solved: no clearance with a piece to choose is known well enough.</summary>
    NotAssessed,

    /// <summary>Pieces alone bring every clearance surely into its window.</summary>
    Fits,

    /// <summary>Pieces and the cuts named do. A cut is a proposal until it is made and read again.</summary>
    FitsWithCuts,

    /// <summary>Nothing that may be chosen does.</summary>
    NothingFits,
}

/// <summary>A clearance that can't be brought right.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Gap">Its gap with the choice that serves it best, whatever the others need.</param>
/// <param name="ToEnter">The change that would bring that gap surely into the window; zero when it is the others that stand in its way.</param>
/// <param name="ToTarget">The change that would bring it to the wanted gap.</param>
/// <param name="Members">The pieces that serve it best.</param>
/// <param name="Cuts">What may be machined, from which face, how much, and every clearance that the cut touches.</param>
public sealed record LoopMiss(
    string Loop, Length Gap, Length ToEnter, Length ToTarget, ImmutableArray<string> Members, ImmutableArray<CutAdvice> Cuts);

/// <summary>A clearance that could not be taken in.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Reasons">What is missing.</param>
public sealed record LoopLeftOut(string Loop, ImmutableArray<Reason> Reasons);
