using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Selection;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>What is asked of a selection.</summary>
/// <param name="Clearances">The clearances to bring right; all that have a selective piece when not said. Those that share a piece with them are taken along.</param>
/// <param name="Cuts">When cuts may be proposed.</param>
/// <param name="Targets">Wanted gaps that differ from the family's.</param>
/// <param name="Series">Another series to choose from at a position.</param>
/// <param name="Available">How many of each member are on the shelf; any when not said.</param>
/// <param name="Alternatives">How many alternatives to rank after the best.</param>
public sealed record SelectionAskRequest(
    [Entries(1, 100), Id] ImmutableArray<string>? Clearances = null,
    CutUse Cuts = CutUse.WhenNeeded,
    [Entries(0, 100)] ImmutableArray<TargetRequest>? Targets = null,
    [Entries(0, 100)] ImmutableArray<OtherSeriesRequest>? Series = null,
    [Entries(0, 500)] ImmutableArray<ShelfRequest>? Available = null,
    [Between(0, 20)] int Alternatives = 3);

/// <summary>A wanted gap.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Gap">The gap wanted, inside its window.</param>
public sealed record TargetRequest([Id] string Clearance, [Of(Dimension.Length)] SentQuantity Gap);

/// <summary>Another series to choose from.</summary>
/// <param name="Position">Where the piece sits.</param>
/// <param name="Series">The series.</param>
public sealed record OtherSeriesRequest([Id] string Position, [Id] string Series);

/// <summary>How many of a member are on the shelf.</summary>
/// <param name="Member">The member.</param>
/// <param name="Count">How many.</param>
public sealed record ShelfRequest([Id] string Member, [Between(0, 100000)] int Count);

/// <summary>Which rings, shims, washers and cuts bring the clearances of a unit right together.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="UnitVersion">Its version.</param>
/// <param name="Outcome">What can be done: <c>fits</c>, <c>fits-with-cuts</c>, <c>nothing-fits</c>, <c>not-assessed</c>.</param>
/// <param name="Best">The proven best choice; when nothing fits, the one that comes nearest with pieces alone.</param>
/// <param name="Alternatives">The next best.</param>
/// <param name="Cuts">Instructions for the cuts of the best choice.</param>
/// <param name="Misses">When nothing fits: each clearance that misses, by what, and what could be machined for it.</param>
/// <param name="LeftOut">Clearances that could not be taken in, with why.</param>
/// <param name="Reasons">Why.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="InputsSha256">Hash of what it was made from.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before this answer.</param>
public sealed record UnitSelectionWire(
    string Unit,
    long UnitVersion,
    string Outcome,
    UnitSelectionSolutionWire? Best,
    ImmutableArray<UnitSelectionSolutionWire> Alternatives,
    ImmutableArray<CutInstructionWire> Cuts,
    ImmutableArray<LoopMissWire> Misses,
    ImmutableArray<LoopLeftOutWire> LeftOut,
    ImmutableArray<ReasonWire> Reasons,
    RuleWire Rules,
    string InputsSha256,
    ImmutableArray<string> Cautions);

/// <summary>One complete choice.</summary>
/// <param name="Picks">What is chosen.</param>
/// <param name="Gaps">What it does to each clearance.</param>
/// <param name="Chance">The chance that all clearances lie in their windows together.</param>
public sealed record UnitSelectionSolutionWire(ImmutableArray<UnitSelectionPickWire> Picks, ImmutableArray<UnitSelectionGapWire> Gaps, double? Chance)
{
    /// <summary>From the engine.</summary>
    public static UnitSelectionSolutionWire From(SelectionSolution s, double? chance, FamilyIndex family, Display show) => new(
        [.. s.Picks.Select(p => new UnitSelectionPickWire(p.Choice, p.Option.Members, show.Length(p.Option.Amount)))],
        [.. s.Gaps.Select(g => UnitSelectionGapWire.From(g, family, show))],
        Numbers.Finite(chance));
}

/// <summary>One thing chosen.</summary>
/// <param name="Choice">A position, or a cut as operation@position.</param>
/// <param name="Members">Ids of the pieces; empty for a cut.</param>
/// <param name="Amount">The thickness, or the signed change of the dimension that is cut.</param>
public sealed record UnitSelectionPickWire(string Choice, ImmutableArray<string> Members, QuantityWire Amount);

/// <summary>A clearance with a choice made.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Gap">Its gap.</param>
/// <param name="Margin">Distance to the nearest guarded end in standard uncertainties; negative outside.</param>
public sealed record UnitSelectionGapWire(string Clearance, string Name, QuantityWire Gap, decimal Margin)
{
    /// <summary>From the engine.</summary>
    public static UnitSelectionGapWire From(SelectionGap g, FamilyIndex family, Display show) =>
        new(g.Loop, show.Words(family.Loops[g.Loop].Name), show.Length(g.Gap), g.Margin / 100m);
}

/// <summary>How to make one cut: a proposal until the readings before and after it are recorded.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="At">The dimension that is cut.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="Change">The signed change; negative where metal comes off.</param>
/// <param name="MayBeMore">How much more may come off.</param>
/// <param name="MayBeLess">How much less may come off.</param>
/// <param name="Before">The dimension as it is, where it was read.</param>
/// <param name="After">What it is to be.</param>
/// <param name="Touches">Every clearance that the cut changes, with the gap it is to have.</param>
/// <param name="RemeasureGate">Characteristics to read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
/// <param name="Reasons">Why this much.</param>
public sealed record CutInstructionWire(
    string Operation,
    string At,
    string Datum,
    QuantityWire Change,
    QuantityWire MayBeMore,
    QuantityWire MayBeLess,
    QuantityWire? Before,
    QuantityWire? After,
    ImmutableArray<UnitSelectionGapWire> Touches,
    ImmutableArray<string> RemeasureGate,
    ImmutableArray<string> Cautions,
    ImmutableArray<ReasonWire> Reasons)
{
    /// <summary>From the engine.</summary>
    public static CutInstructionWire From(CutInstruction c, FamilyIndex family, Display show) => new(
        c.Operation, c.At.ToString(), c.Datum, show.Length(c.Change), show.Length(c.MayBeMore), show.Length(c.MayBeLess),
        show.LengthMaybe(c.Before), show.LengthMaybe(c.After), [.. c.Touches.Select(t => UnitSelectionGapWire.From(t, family, show))],
        c.RemeasureGate, [.. c.Cautions.Select(show.Words)], [.. c.Reasons.Select(r => ReasonWire.From(r, family))]);
}

/// <summary>A clearance that can't be brought right.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Gap">Its gap with the choice that serves it best, whatever the others need.</param>
/// <param name="ToEnter">The change that would bring that gap surely into the window.</param>
/// <param name="ToTarget">The change that would bring it to the wanted gap.</param>
/// <param name="Members">The pieces that serve it best.</param>
/// <param name="Cuts">What may be machined.</param>
public sealed record LoopMissWire(
    string Clearance, QuantityWire Gap, QuantityWire ToEnter, QuantityWire ToTarget, ImmutableArray<string> Members, ImmutableArray<CutWire> Cuts)
{
    /// <summary>From the engine.</summary>
    public static LoopMissWire From(LoopMiss m, FamilyIndex family, Display show) => new(
        m.Loop, show.Length(m.Gap), show.Length(m.ToEnter), show.Length(m.ToTarget), m.Members, [.. m.Cuts.Select(c => CutWire.From(c, family, show))]);
}

/// <summary>A clearance that could not be taken in.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Reasons">What is missing.</param>
public sealed record LoopLeftOutWire(string Clearance, ImmutableArray<ReasonWire> Reasons);
