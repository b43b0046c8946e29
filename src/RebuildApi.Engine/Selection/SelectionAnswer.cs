using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Selection;

/// <summary>The best choice, proven: nothing else that may be chosen ranks before it.</summary>
/// <param name="Best">The best choice; none only when the pieces that there are do not reach for all positions.</param>
/// <param name="Alternatives">The next best, in order.</param>
public sealed record SelectionAnswer(SelectionSolution? Best, ImmutableArray<SelectionSolution> Alternatives)
{
    /// <summary>Whether the best choice brings every clearance surely inside its window.</summary>
    public bool IsFeasible => Best is { Rank.Margin: >= 0 };
}

/// <summary>One complete choice.</summary>
/// <param name="Picks">What is chosen, in the order of the problem's choices.</param>
/// <param name="Gaps">What it does to each clearance, in the order of the problem's loops.</param>
/// <param name="Rank">What it is ranked by.</param>
public sealed record SelectionSolution(ImmutableArray<SelectionPick> Picks, ImmutableArray<SelectionGap> Gaps, SelectionRank Rank);

/// <summary>One thing chosen.</summary>
/// <param name="Choice">Id of the choice.</param>
/// <param name="Option">What is chosen.</param>
public sealed record SelectionPick(string Choice, SelectionOption Option);

/// <summary>A clearance with a choice made.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Gap">Its gap, to the nearest nanometre.</param>
/// <param name="Margin">Distance to the nearest guarded end in hundredths of a standard uncertainty, rounded down; negative outside.</param>
public sealed record SelectionGap(string Loop, Length Gap, long Margin);

/// <summary>
/// What choices are ranked by, whole numbers, the first that differs decides: largest smallest margin; least total distance from the
/// targets; fewest pieces; least cost; least metal removed.
/// </summary>
/// <param name="Margin">The smallest margin of all clearances in hundredths of a standard uncertainty, rounded down; not negative when all are surely inside.</param>
/// <param name="Distance">Total distance from the targets in nanometres, times the common denominator of the problem's coefficients.</param>
/// <param name="Pieces">Number of pieces.</param>
/// <param name="Cost">Minor units; an unknown price counts one more than the dearest known one.</param>
/// <param name="Removed">Metal removed in nanometres.</param>
public readonly record struct SelectionRank(long Margin, long Distance, long Pieces, long Cost, long Removed) : IComparable<SelectionRank>
{
    /// <summary>Less than zero when this ranks before the other.</summary>
    public int CompareTo(SelectionRank other)
    {
        var margin = other.Margin.CompareTo(Margin);
        return margin != 0
            ? margin
            : (Distance, Pieces, Cost, Removed).CompareTo((other.Distance, other.Pieces, other.Cost, other.Removed));
    }
}
