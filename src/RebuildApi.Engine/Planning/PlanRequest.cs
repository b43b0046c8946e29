using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Serialization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Money;
using RebuildApi.Engine.Pairings;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Selection;

namespace RebuildApi.Engine.Planning;

/// <summary>What is asked of a plan for a unit. All money is whole minor units of the shop's one currency.</summary>
public sealed record PlanRequest
{
    /// <summary>The parts that may go in besides those found: catalogue, shelf, cores. Reworks of the parts found are added by the planner.</summary>
    public ImmutableArray<PlanCandidate> Candidates { get; init; } = [];

    /// <summary>What the rings, shims and washers of the family's series cost and where they are. A series of which none is named can be bought at an unknown price.</summary>
    public ImmutableArray<PieceOffer> Pieces { get; init; } = [];

    /// <summary>What the plan is to be best in.</summary>
    public PlanObjective Objective { get; init; } = PlanObjective.LeastCost;

    /// <summary>What time, comebacks and doubt cost.</summary>
    public PlanRates Rates { get; init; } = new();

    /// <summary>What the plan must keep to.</summary>
    public PlanLimits Limits { get; init; } = new();

    /// <summary>When cuts of the parts found may be proposed to bring clearances right.</summary>
    public CutUse Cuts { get; init; } = CutUse.WhenNeeded;

    /// <summary>How long it may look.</summary>
    public PlanEffort Effort { get; init; } = new();

    /// <summary>How amounts are said in words; in minor units when not given.</summary>
    public MoneyRules? Money { get; init; }

    /// <summary>An amount in words.</summary>
    internal string Said(long minor) => Money?.Words(minor) ?? string.Create(CultureInfo.InvariantCulture, $"{minor} minor units");
}

/// <summary>A part that may go in.</summary>
/// <param name="Id">What it is called in the shop's lists: a catalogue number, or the id of the part on the shelf. Unique.</param>
/// <param name="Source">Where it would come from.</param>
/// <param name="Part">The part, with what was read and seen on it. A catalogue part has its declared attributes and stands on its drawing.</param>
/// <param name="Price">Minor units, or none when it is not known; an unknown price never counts as the cheaper one.</param>
/// <param name="LeadDays">Days until it is there; 0 when it is in the house.</param>
/// <param name="Vendor">Who sells it, if anyone.</param>
/// <param name="OnHand">How many there are; none when any number can be had.</param>
public sealed record PlanCandidate(string Id, PartSource Source, Candidate Part, long? Price, int LeadDays, string? Vendor, int? OnHand)
{
    /// <summary>The positions it may go to; empty means every position of its kind.</summary>
    public ImmutableArray<string> Positions { get; init; } = [];

    /// <summary>What it came with: parts of one set bear the same name here. None when it came by itself.</summary>
    public string? Set { get; init; }
}

/// <summary>A member of a series that can be had.</summary>
/// <param name="Series">The series.</param>
/// <param name="Member">The member.</param>
/// <param name="Price">Minor units, or none when it is not known.</param>
/// <param name="LeadDays">Days until it is there; 0 when it is in the house.</param>
/// <param name="Vendor">Who sells it, if anyone.</param>
/// <param name="OnHand">How many there are; none when any number can be had.</param>
public sealed record PieceOffer(string Series, string Member, long? Price, int LeadDays, string? Vendor, int? OnHand)
{
    /// <summary>What is declared of such a piece: that its surface is as made, say. What is left out is unknown.</summary>
    public ImmutableSortedDictionary<string, string> Attributes { get; init; } = ImmutableSortedDictionary<string, string>.Empty;
}

/// <summary>Where a part comes from.</summary>
public enum PartSource
{
    /// <summary>It came in this unit and goes back as it is.</summary>
    Found,

    /// <summary>It came in this unit and goes back after work on it.</summary>
    Rework,

    /// <summary>It is bought new.</summary>
    Catalogue,

    /// <summary>It is a measured part on the shelf.</summary>
    Shelf,

    /// <summary>It is taken from another unit.</summary>
    Core,

    /// <summary>It is a new single-use part or piece that no list of the shop names: to be bought at a price still to be asked for.</summary>
    ToBeBought,
}

/// <summary>What a plan is to be best in. What ties is decided by the least cost.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<PlanObjective>))]
public enum PlanObjective
{
    /// <summary>Parts, labour and expected comeback cost together.</summary>
    LeastCost,

    /// <summary>The day the last part is there, then the cost.</summary>
    SoonestReady,

    /// <summary>Fewest parts that did not come in the unit (single-use parts and pieces apart), then the cost.</summary>
    MostOriginal,

    /// <summary>
    /// The least expected comeback cost, each place and pairing counted in whole steps of <see cref="PlanRates.NegligibleRisk"/>, then the cost with
    /// every risk counted in full; used parts that are not proven good stay out.
    /// </summary>
    MostConservative,
}

/// <summary>What time, comebacks and doubt cost. The chances are the shop's own judgement, no source.</summary>
public sealed record PlanRates
{
    /// <summary>Labour per hour, minor units.</summary>
    public long LabourPerHour { get; init; } = 6000;

    /// <summary>What one comeback costs the shop, minor units.</summary>
    public long ComebackCost { get; init; } = 80000;

    /// <summary>Chance, 0..1, that a part of which something needed is not known proves bad.</summary>
    public double OpenPartRisk { get; init; } = 0.20;

    /// <summary>Chance, 0..1, that parts of which it is not known whether they may run together prove bad together.</summary>
    public double OpenPairingRisk { get; init; } = 0.02;

    /// <summary>Chance, 0..1, that a pairing that holds on a condition only brings the unit back.</summary>
    public double ConditionalRisk { get; init; } = 0.10;

    /// <summary>
    /// Expected comeback cost of one place or pairing, minor units, below which the most conservative plan exchanges nothing for more certainty; a
    /// hundredth of what a comeback costs when none is given (the shop's judgement, no source).
    /// </summary>
    public long? NegligibleRisk { get; init; }

    /// <summary>What a part or piece without a known price is counted at, minor units; when none is given, one more than the dearest known.</summary>
    public long? UnknownPrice { get; init; }
}

/// <summary>What a plan must keep to.</summary>
public sealed record PlanLimits
{
    /// <summary>Most that parts and labour may cost together, minor units.</summary>
    public long? MostCost { get; init; }

    /// <summary>Most days until the last part is there.</summary>
    public int? MostDays { get; init; }

    /// <summary>Positions whose found part must go back, as it is or reworked.</summary>
    public ImmutableHashSet<string> KeepOriginal { get; init; } = [];

    /// <summary>Position to the one candidate that must go there: its id, or <c>found</c>.</summary>
    public ImmutableDictionary<string, string> Fixed { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>Candidates that must not be used.</summary>
    public ImmutableHashSet<string> Without { get; init; } = [];

    /// <summary>Whether used parts that are not proven good may go in, each on the condition that it is read or looked at first.</summary>
    public bool AcceptOpen { get; init; } = true;

    /// <summary>Whether pairings may hold on a condition only.</summary>
    public bool AcceptConditional { get; init; } = true;
}
