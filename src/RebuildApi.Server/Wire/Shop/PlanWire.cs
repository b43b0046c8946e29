using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning;
using RebuildApi.Engine.Selection;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>What is asked of a plan.</summary>
/// <param name="Person">Who asks.</param>
/// <param name="Objective">What it is to be best in.</param>
/// <param name="Cuts">When parts found may be cut to bring clearances right.</param>
/// <param name="MostCost">Most that parts and labour may cost together, without tax.</param>
/// <param name="MostDays">Most days until the last part is there.</param>
/// <param name="KeepOriginal">Positions whose found part must go back, as it is or reworked.</param>
/// <param name="Fixed">Position to what must go there: <c>found</c>, or a candidate as plans name it.</param>
/// <param name="Without">Candidates that must not be used.</param>
/// <param name="AcceptOpen">Whether used parts that are not proven good may go in, each on the condition that it is read or looked at first.</param>
/// <param name="AcceptConditional">Whether pairings may hold on a condition only.</param>
/// <param name="Candidates">Parts that are only spoken of, each taken as if it could be had: what if I bought this? Plans call the first of them <c>sent#1</c>.</param>
/// <param name="NegligibleRisk">Expected comeback cost of one place or pairing below which the most conservative plan exchanges nothing; a hundredth of what a comeback costs when not said.</param>
public sealed record PlanAskRequest(
    [Words(100)] string Person,
    PlanObjective Objective = PlanObjective.LeastCost,
    CutUse Cuts = CutUse.WhenNeeded,
    MoneyRequest? MostCost = null,
    [Between(0, 3650)] int? MostDays = null,
    [Entries(0, 200)][Id] ImmutableArray<string>? KeepOriginal = null,
    IReadOnlyDictionary<string, string>? Fixed = null,
    [Entries(0, 500)][Words(100)] ImmutableArray<string>? Without = null,
    bool AcceptOpen = true,
    bool AcceptConditional = true,
    [Entries(0, 100)] ImmutableArray<PlanCandidateRequest>? Candidates = null,
    MoneyRequest? NegligibleRisk = null);

/// <summary>A part that is only spoken of, as if it could be had.</summary>
/// <param name="Position">Where it would go.</param>
/// <param name="Label">What it is called in the words of the shop.</param>
/// <param name="IsNew">Whether it is new, and stands on its drawing until it is read; else a single used part.</param>
/// <param name="Attributes">Attribute to value; what is left out is unknown, and unknown is never good.</param>
/// <param name="Readings">What was read of it.</param>
/// <param name="Price">What it would cost; left out when it is still to be asked for.</param>
/// <param name="LeadDays">Days until it would be there.</param>
/// <param name="Vendor">Who would sell it.</param>
/// <param name="Set">What it would come with: parts of one set bear the same name here.</param>
public sealed record PlanCandidateRequest(
    [Id] string Position,
    [Words(100)] string? Label = null,
    bool IsNew = true,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Entries(0, 100)] ImmutableArray<LooseReadingRequest>? Readings = null,
    MoneyRequest? Price = null,
    [Between(0, 3650)] int LeadDays = 0,
    [Words(100)] string? Vendor = null,
    [Words(100)] string? Set = null);

/// <summary>The best complete set of decisions for a unit, or why there is none.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Objective">What it is best in.</param>
/// <param name="Status">Proven: nothing is better. Bounded: the limit stopped the search. Impossible: proven that nothing fits. Unknown: stopped before anything was found.</param>
/// <param name="Gap">How much better another plan could be at most; 0 when it is proven.</param>
/// <param name="Cost">What it costs; none when there is no plan.</param>
/// <param name="Minutes">Bench time together.</param>
/// <param name="ReadyInDays">Days until the last part is there.</param>
/// <param name="Lines">What goes into each place, in stripping order.</param>
/// <param name="Work">The bench work, in order.</param>
/// <param name="Conditions">What must still be read, looked at or agreed before the plan holds.</param>
/// <param name="Clearances">Each clearance with the parts and pieces of the plan.</param>
/// <param name="Pairings">Each pairing with the parts of the plan that is not simply compatible.</param>
/// <param name="ToMeasure">What it would be worth to read first, the most valuable first.</param>
/// <param name="Conflicts">When there is no plan: the demands that can't all be met; without any one of them the others can.</param>
/// <param name="Unlocks">When there is no plan: single things after which there is one, cheapest first.</param>
/// <param name="Reasons">Why this plan.</param>
/// <param name="Person">Who asked.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="InputsSha256">Hash of the unit that it was made from.</param>
/// <param name="OffersSha256">Hash of the prices and the shelf that it was made from.</param>
/// <param name="Rules">Whose rules.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before this answer.</param>
public sealed record PlanWire(
    string Id,
    string Unit,
    string Objective,
    string Status,
    MoneyWire Gap,
    PlanCostWire? Cost,
    decimal Minutes,
    int ReadyInDays,
    ImmutableArray<PlanLineWire> Lines,
    ImmutableArray<PlanWorkWire> Work,
    ImmutableArray<PlanConditionWire> Conditions,
    ImmutableArray<PlanClearanceWire> Clearances,
    ImmutableArray<PlanPairingWire> Pairings,
    ImmutableArray<ToMeasureWire> ToMeasure,
    ImmutableArray<PlanConflictWire> Conflicts,
    ImmutableArray<PlanUnlockWire> Unlocks,
    ImmutableArray<ReasonWire> Reasons,
    string Person,
    DateTimeOffset Time,
    string InputsSha256,
    string OffersSha256,
    RuleWire Rules,
    ImmutableArray<string> Cautions)
{
    /// <summary>Whether the unit, the prices and the shelf are still what they were when it was made; not said while it is being made.</summary>
    public bool? StillStands { get; init; }

    /// <summary>Where it differs from another plan, when one is named.</summary>
    public ImmutableArray<PlanDifferenceWire>? Against { get; init; }
}

/// <summary>What a plan costs, without tax.</summary>
/// <param name="Parts">Parts and pieces.</param>
/// <param name="Labour">Bench time.</param>
/// <param name="Comeback">Expected comeback cost: what is still unsure, at what a comeback costs the shop. Never charged.</param>
/// <param name="Total">All three together: what plans are compared by.</param>
/// <param name="HasUnknownPrices">Whether a price is still to be asked for.</param>
public sealed record PlanCostWire(MoneyWire Parts, MoneyWire Labour, MoneyWire Comeback, MoneyWire Total, bool HasUnknownPrices);

/// <summary>What goes into one place.</summary>
/// <param name="Position">The place.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Candidate">What goes in: found, found and worked on, from the price list (order/…), from the shelf (shelf/…), or a piece of a series.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Disposition">Reuse, rework or replace.</param>
/// <param name="Members">The pieces of the series.</param>
/// <param name="Outcome">Whether it conforms. Not assessed and inconclusive parts have a condition, and never count as good.</param>
/// <param name="Price">What it costs; none when the price is not known.</param>
/// <param name="Labour">What the work on it costs.</param>
/// <param name="LeadDays">Days until it is there.</param>
/// <param name="Vendor">Who sells it.</param>
/// <param name="NextBest">What else would do, and how much more the whole plan would then cost.</param>
/// <param name="Reasons">Why.</param>
public sealed record PlanLineWire(
    string Position,
    string Name,
    string Candidate,
    string Source,
    string Disposition,
    ImmutableArray<string> Members,
    string Outcome,
    MoneyWire? Price,
    MoneyWire Labour,
    int LeadDays,
    string? Vendor,
    NextBestWire? NextBest,
    ImmutableArray<ReasonWire> Reasons) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Position}: {Candidate}";
}

/// <summary>What else would do in a place.</summary>
/// <param name="Candidate">What.</param>
/// <param name="Extra">How much more the whole plan would then cost.</param>
public sealed record NextBestWire(string Candidate, MoneyWire Extra);

/// <summary>A piece of bench work.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Position">On which part; none for work on the whole unit.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="Change">The signed change of the dimension that is cut.</param>
/// <param name="Datum">The face or axis it is taken from.</param>
/// <param name="Remeasure">What must be read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
public sealed record PlanWorkWire(
    string Operation, string Name, string? Position, decimal Minutes, QuantityWire? Change, string? Datum, ImmutableArray<string> Remeasure, ImmutableArray<string> Cautions);

/// <summary>What must still be done before a plan holds.</summary>
/// <param name="Code">What sort of thing.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Counted">What the doubt is counted at.</param>
/// <param name="Text">Why.</param>
public sealed record PlanConditionWire(string Code, string Subject, MoneyWire Counted, string Text);

/// <summary>One clearance with the parts and pieces of a plan.</summary>
/// <param name="Clearance">The clearance.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Outcome">Its outcome.</param>
/// <param name="Gap">Its gap.</param>
/// <param name="Against">Its window.</param>
/// <param name="Probability">Chance that it lies in its window.</param>
public sealed record PlanClearanceWire(string Clearance, string Name, string Outcome, QuantityWire? Gap, LimitsWire? Against, double? Probability);

/// <summary>One pairing with the parts of a plan.</summary>
/// <param name="Pairing">The pairing.</param>
/// <param name="Outcome">Its outcome.</param>
/// <param name="Reasons">Why.</param>
public sealed record PlanPairingWire(string Pairing, string Outcome, ImmutableArray<ReasonWire> Reasons);

/// <summary>What it would be worth to know better before deciding (value of information).</summary>
/// <param name="Position">The place.</param>
/// <param name="Candidate">The part in doubt.</param>
/// <param name="Read">What to read or look at.</param>
/// <param name="ChanceGood">Chance that it proves good.</param>
/// <param name="CostIfGood">What the best plan then costs.</param>
/// <param name="CostIfBad">What the best plan then costs; none when there then is none.</param>
/// <param name="Value">What it is worth on average.</param>
/// <param name="InPlan">Whether the plan hangs on it.</param>
public sealed record ToMeasureWire(
    string Position, string Candidate, ImmutableArray<string> Read, double ChanceGood, MoneyWire CostIfGood, MoneyWire? CostIfBad, MoneyWire Value, bool InPlan);

/// <summary>Demands that can't all be met.</summary>
/// <param name="Demands">The demands, in words.</param>
/// <param name="Text">In plain words.</param>
/// <param name="Smallest">Whether each was tried: without any one of them the others can be met. Else the search was stopped, and there may be fewer.</param>
public sealed record PlanConflictWire(ImmutableArray<PlanDemandWire> Demands, string Text, bool Smallest);

/// <summary>Something that a plan must meet.</summary>
/// <param name="Id">What it is about.</param>
/// <param name="Kind">What sort of demand.</param>
/// <param name="Text">In plain words.</param>
public sealed record PlanDemandWire(string Id, string Kind, string Text);

/// <summary>One thing after which there is a plan.</summary>
/// <param name="What">A purchase, a rework, a relaxed limit, or a measurement.</param>
/// <param name="Subject">The position, or the demand to relax.</param>
/// <param name="Cost">What the plan then costs, what is bought for it not counted.</param>
/// <param name="Text">In plain words.</param>
public sealed record PlanUnlockWire(string What, string Subject, MoneyWire Cost, string Text)
{
    /// <summary>What one dimension must read, where reading it is the one thing.</summary>
    public UnlockReadingWire? Reading { get; init; }
}

/// <summary>What one dimension must read so that there is a plan. Both ends were tried; just outside there is none.</summary>
/// <param name="At">What is read: position and characteristic.</param>
/// <param name="Readings">How many readings, all alike, that supposes.</param>
/// <param name="Step">How finely it is read.</param>
/// <param name="Low">The lowest reading, in millimetres.</param>
/// <param name="High">The highest, in millimetres.</param>
/// <param name="LowInches">The lowest, in inches.</param>
/// <param name="HighInches">The highest, in inches.</param>
/// <param name="Probability">Chance that it lies there by what is known of it now; absent when nothing is. It may also turn out otherwise.</param>
public sealed record UnlockReadingWire(
    string At, int Readings, QuantityWire Step, QuantityWire Low, QuantityWire High, QuantityWire LowInches, QuantityWire HighInches, double? Probability)
{
    /// <summary>From the engine.</summary>
    public static UnlockReadingWire From(string at, UnlockReading reading)
    {
        var (metric, inches) = (Display.For("mm"), Display.For("in"));
        return new(
            at, reading.Readings, metric.Length(reading.Step), metric.Length(reading.Low), metric.Length(reading.High), inches.Length(reading.Low), inches.Length(reading.High), reading.Chance);
    }
}

/// <summary>Where two plans differ.</summary>
/// <param name="Position">The place.</param>
/// <param name="This">What goes in by this plan.</param>
/// <param name="Other">What goes in by the other.</param>
public sealed record PlanDifferenceWire(string Position, string? This, string? Other);

/// <summary>A plan in one row, to compare.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Objective">What it is best in.</param>
/// <param name="Status">How sure it is.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="ReadyInDays">Days until the last part is there.</param>
/// <param name="Kept">How many parts that came in go back.</param>
/// <param name="Replaced">How many places get another part or piece.</param>
/// <param name="Conditions">How many things must still be read, looked at or agreed.</param>
/// <param name="Chosen">Whether it is the one that was chosen to be built.</param>
/// <param name="Person">Who asked.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PlanRowWire(
    string Id, string Objective, string Status, PlanCostWire? Cost, decimal Minutes, int ReadyInDays, int Kept, int Replaced, int Conditions, bool Chosen, string Person, DateTimeOffset Time)
{
    /// <summary>A plan in one row.</summary>
    public static PlanRowWire From(PlanWire p, bool chosen) => new(
        p.Id, p.Objective, p.Status, p.Cost, p.Minutes, p.ReadyInDays, p.Lines.Count(l => l.Disposition != "replace"), p.Lines.Count(l => l.Disposition == "replace"),
        p.Conditions.Length, chosen, p.Person, p.Time);
}

/// <summary>Plans between the cheapest and the surest, none of which is beaten in both.</summary>
/// <param name="Items">The plans, the cheapest first.</param>
public sealed record TradeOffWire(ImmutableArray<PlanRowWire> Items);

/// <summary>What is asked of a trade-off.</summary>
/// <param name="Most">Most plans to list.</param>
public sealed record TradeOffRequest([Between(1, 12)] int Most = 5);

/// <summary>That a person of the shop chose a plan to be built.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Reason">Why this one.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PlanChoiceWire(string Id, string Plan, string Person, string? Reason, DateTimeOffset Time);

/// <summary>A plan is chosen to be built.</summary>
/// <param name="Person">Who signs.</param>
/// <param name="Reason">Why this one, in their own words.</param>
public sealed record PlanChoiceRequest([Words(100)] string Person, [Words(2000, Lines = true)] string? Reason = null);
