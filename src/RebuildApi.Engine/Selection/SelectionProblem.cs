using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>Clearances that are to come right together, and what may be chosen for them. Pure numbers: nothing of a family or a unit is left in it.</summary>
/// <param name="Loops">The clearances; at least one.</param>
/// <param name="Choices">What is chosen: the pack at a position, or the depth of a cut.</param>
/// <param name="Available">How many of each member there are, counted over all positions; none means any number can be had.</param>
public sealed record SelectionProblem(
    ImmutableArray<SelectionLoop> Loops, ImmutableArray<SelectionChoice> Choices, IReadOnlyDictionary<string, int>? Available = null);

/// <summary>One clearance: gap = without + Σ coefficient × amount chosen.</summary>
/// <param name="Id">The clearance.</param>
/// <param name="Without">The gap before anything is chosen.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the gap, metres; not negative.</param>
/// <param name="GuardedLow">The smallest gap that is surely inside the window, or none when there is no limit below.</param>
/// <param name="GuardedHigh">The largest gap that is surely inside; below the low one when the window is too narrow for the uncertainty.</param>
/// <param name="Target">The wanted gap.</param>
/// <param name="Terms">The choices that enter it.</param>
public sealed record SelectionLoop(
    string Id,
    Length Without,
    double StandardUncertainty,
    Length? GuardedLow,
    Length? GuardedHigh,
    Length Target,
    ImmutableArray<SelectionTerm> Terms);

/// <summary>How a choice enters a clearance.</summary>
/// <param name="Choice">Id of the choice.</param>
/// <param name="Numerator">Signed, not zero.</param>
/// <param name="Denominator">Positive.</param>
public sealed record SelectionTerm(string Choice, int Numerator, int Denominator = 1);

/// <summary>One thing to choose.</summary>
/// <param name="Id">A position, or a cut.</param>
/// <param name="Options">At least one.</param>
public sealed record SelectionChoice(string Id, ImmutableArray<SelectionOption> Options);

/// <summary>One way to choose it.</summary>
/// <param name="Members">Ids of the pieces; empty for a cut.</param>
/// <param name="Amount">The thickness, or the signed change of the dimension that is cut.</param>
/// <param name="Cost">Minor units, or none when it is not known; an unknown price never counts as the cheaper one.</param>
/// <param name="Removed">Metal removed; zero for pieces.</param>
public sealed record SelectionOption(ImmutableArray<string> Members, Length Amount, long? Cost, Length Removed = default);
