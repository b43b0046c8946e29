using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Selection;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>Clearances that are to come right together, and what may be chosen for them.</summary>
/// <param name="Loops">The clearances.</param>
/// <param name="Choices">The positions and cuts to choose.</param>
/// <param name="Alternatives">How many more to rank after the best.</param>
/// <param name="Rule">The decision rule that a gap must satisfy.</param>
/// <param name="Probability">How sure it must be.</param>
public sealed record SelectionCalculationRequest(
    [Entries(1, 10)] ImmutableArray<SelectionLoopRequest> Loops,
    [Entries(1, 20)] ImmutableArray<SelectionChoiceRequest> Choices,
    [Between(0, 10)] int Alternatives = 3,
    DecisionRule Rule = DecisionRule.Guarded,
    [Between(0.5001, 0.999999)] decimal Probability = 0.95m);

/// <summary>One clearance: gap = without + Σ coefficient × what is chosen.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Without">The gap before anything is chosen.</param>
/// <param name="Window">What the gap must be.</param>
/// <param name="Terms">The choices that enter it.</param>
/// <param name="StandardUncertainty">Standard uncertainty of the gap; 0 when not said.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of that; many when not said.</param>
public sealed record SelectionLoopRequest(
    [Id] string Id,
    [Of(Dimension.Length)] SentQuantity Without,
    WindowRequest Window,
    [Entries(1, 8)] ImmutableArray<SelectionTermRequest> Terms,
    SentQuantity? StandardUncertainty = null,
    [Between(1, 1e9)] decimal? DegreesOfFreedom = null);

/// <summary>How a choice enters a clearance.</summary>
/// <param name="Choice">Id of the choice.</param>
/// <param name="Numerator">Signed coefficient, not 0: a ring that closes the gap has −1.</param>
/// <param name="Denominator">Its denominator.</param>
public sealed record SelectionTermRequest([Id] string Choice, [Between(-12, 12)] int Numerator = -1, [Between(1, 12)] int Denominator = 1);

/// <summary>One thing to choose: pieces of a series, or the depth of a cut. Exactly one of members and cut.</summary>
/// <param name="Id">A position, or a cut.</param>
/// <param name="Members">The pieces that exist.</param>
/// <param name="MaxPieces">How many may be stacked.</param>
/// <param name="Cut">The cut.</param>
public sealed record SelectionChoiceRequest(
    [Id] string Id,
    [Entries(1, 60)] ImmutableArray<SelectionMemberRequest>? Members = null,
    [Between(1, 3)] int MaxPieces = 1,
    CutRangeRequest? Cut = null);

/// <summary>A piece of a series.</summary>
/// <param name="Id">Its id; pieces with one id are the same wherever they stand.</param>
/// <param name="Thickness">Its thickness.</param>
/// <param name="Cost">Its price in minor units.</param>
/// <param name="Available">How many there are; any number when not said.</param>
public sealed record SelectionMemberRequest(
    [Id] string Id,
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Thickness,
    [Between(0, 1e8)] int? Cost = null,
    [Between(0, 1e6)] int? Available = null);

/// <summary>A cut: none, or from one step to the most, in steps. What is cut loses that much.</summary>
/// <param name="Step">The step.</param>
/// <param name="Most">The most that may come off.</param>
public sealed record CutRangeRequest(
    [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Step, [Of(Dimension.Length, Sign = SignRule.Positive)] SentQuantity Most);

/// <summary>The proven best choice and those next to it.</summary>
/// <param name="Fits">Whether the best brings every clearance surely into its window.</param>
/// <param name="Best">The best; absent when the pieces that there are do not reach.</param>
/// <param name="Alternatives">The next best, in order.</param>
public sealed record SelectionCalculationWire(bool Fits, SelectionCalculationSolutionWire? Best, ImmutableArray<SelectionCalculationSolutionWire> Alternatives)
{
    /// <summary>From the engine.</summary>
    public static SelectionCalculationWire From(SelectionAnswer answer, Display show) => new(
        answer.IsFeasible,
        answer.Best is { } best ? SelectionCalculationSolutionWire.From(best, show) : null,
        [.. answer.Alternatives.Select(a => SelectionCalculationSolutionWire.From(a, show))]);
}

/// <summary>One complete choice.</summary>
/// <param name="Picks">What is chosen.</param>
/// <param name="Gaps">What it does to each clearance.</param>
/// <param name="SmallestMargin">The smallest distance of all gaps from a surely good end, in standard uncertainties; negative when one is not surely good.</param>
/// <param name="Pieces">Number of pieces.</param>
public sealed record SelectionCalculationSolutionWire(ImmutableArray<SelectionCalculationPickWire> Picks, ImmutableArray<SelectionCalculationGapWire> Gaps, double? SmallestMargin, int Pieces)
{
    /// <summary>From the engine.</summary>
    public static SelectionCalculationSolutionWire From(SelectionSolution s, Display show) => new(
        [.. s.Picks.Select(p => new SelectionCalculationPickWire(p.Choice, p.Option.Members, show.Length(p.Option.Amount)))],
        [.. s.Gaps.Select(g => new SelectionCalculationGapWire(g.Loop, show.Length(g.Gap), Numbers.Finite(g.Margin / 100.0)))],
        Numbers.Finite(s.Rank.Margin / 100.0),
        (int)s.Rank.Pieces);
}

/// <summary>One thing chosen.</summary>
/// <param name="Choice">The choice.</param>
/// <param name="Members">The pieces; empty for a cut.</param>
/// <param name="Amount">Their thickness together, or the change of what is cut.</param>
public sealed record SelectionCalculationPickWire(string Choice, ImmutableArray<string> Members, QuantityWire Amount);

/// <summary>A clearance with a choice made.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Gap">Its gap.</param>
/// <param name="Margin">Distance from the nearer surely good end, in standard uncertainties.</param>
public sealed record SelectionCalculationGapWire(string Loop, QuantityWire Gap, double? Margin);
