using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Allocation;

/// <summary>Many units, and measured parts that could go into them.</summary>
/// <param name="Units">The approved units and what each still needs.</param>
/// <param name="Parts">The parts on the shelf.</param>
/// <param name="Offers">Which part would do where; what is not named would not.</param>
public sealed record AllocationProblem(ImmutableArray<AllocationUnit> Units, ImmutableArray<AllocationPart> Parts, ImmutableArray<AllocationOffer> Offers)
{
    /// <summary>How many nodes of the search may be looked at where the problem does not split; equal for equal inputs.</summary>
    public long MostSteps { get; init; } = 5_000;
}

/// <summary>A unit and what it needs to be completed.</summary>
/// <param name="Id">The unit.</param>
/// <param name="Needs">The places to fill, each once; empty when nothing is needed.</param>
public sealed record AllocationUnit(string Id, ImmutableArray<string> Needs);

/// <summary>A part on the shelf, one individual.</summary>
/// <param name="Id">The part.</param>
/// <param name="ReservedFor">The only unit that it may go to, or none.</param>
/// <param name="Set">The set that it belongs to: parts of one set go to one unit together, or stay on the shelf. None when it stands alone.</param>
public sealed record AllocationPart(string Id, string? ReservedFor = null, string? Set = null);

/// <summary>A part that would do in a place of a unit.</summary>
/// <param name="Part">The part.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Place">The place.</param>
/// <param name="Cost">What it costs there: its price, work on it, expected comebacks; whole minor units, not negative.</param>
public sealed record AllocationOffer(string Part, string Unit, string Place, long Cost);

/// <summary>Which part goes where, so that the most units are completed, and of all such ways the cheapest.</summary>
/// <param name="Completed">The units that can be completed, in the order of the problem.</param>
/// <param name="Assigned">What goes where; only for units that are completed.</param>
/// <param name="Cost">Minor units together.</param>
/// <param name="MostUnits">No way completes more units than this.</param>
/// <param name="LeastCost">No way that completes as many costs less than this.</param>
/// <param name="Misses">Each unit that is not completed, and what it lacks.</param>
/// <param name="Purchases">Single purchases by the units that they would complete beside those above, the most useful first.</param>
/// <param name="Reasons">How it was found, and what was passed over.</param>
public sealed record AllocationAnswer(
    ImmutableArray<string> Completed,
    ImmutableArray<AllocationOffer> Assigned,
    long Cost,
    int MostUnits,
    long LeastCost,
    ImmutableArray<AllocationMiss> Misses,
    ImmutableArray<AllocationPurchase> Purchases,
    ImmutableArray<Reason> Reasons)
{
    /// <summary>Whether it is proven that nothing completes more units, and nothing as many for less.</summary>
    public bool IsProven => MostUnits == Completed.Length && LeastCost == Cost;
}

/// <summary>A unit that is not completed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Lacking">The fewest places that stay empty with what the others leave over.</param>
/// <param name="Reason">Why.</param>
public sealed record AllocationMiss(string Unit, ImmutableArray<string> Lacking, Reason Reason);

/// <summary>A purchase that would complete more units.</summary>
/// <param name="Place">The place that the part is for.</param>
/// <param name="Units">The units of which any one would be completed by one such part.</param>
/// <param name="Reason">In plain words.</param>
public sealed record AllocationPurchase(string Place, ImmutableArray<string> Units, Reason Reason);
