using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;

namespace RebuildApi.Engine.Planning;

/// <summary>The best complete set of decisions for a unit, or why there is none.</summary>
/// <param name="Status">How sure it is.</param>
/// <param name="Plan">The best plan; none when there is none.</param>
/// <param name="Conflicts">When there is none: the demands that can't all be met, each group irreducible and disjoint from those before it.</param>
/// <param name="Unlocks">When there is none: single purchases, works or relaxed demands after which there is a plan, cheapest first.</param>
/// <param name="ToMeasure">What it would be worth to measure first, the most valuable first.</param>
/// <param name="Reasons">What else is to be said.</param>
public sealed record PlanAnswer(
    SolveStatus Status,
    Plan? Plan,
    ImmutableArray<PlanConflict> Conflicts,
    ImmutableArray<PlanUnlock> Unlocks,
    ImmutableArray<MeasuringValue> ToMeasure,
    ImmutableArray<Reason> Reasons);

/// <summary>One disposition and component for every place, every ring, shim and cut, with cost, time and verdicts.</summary>
/// <param name="Objective">What it is best in.</param>
/// <param name="Lines">One for each place of the family, in stripping order.</param>
/// <param name="Work">The bench work, in order.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="Minutes">Bench time together.</param>
/// <param name="ReadyInDays">Days until the last part is there.</param>
/// <param name="Conditions">What must still be read, looked at or agreed before the plan holds.</param>
/// <param name="Parts">The verdict on each part of the plan.</param>
/// <param name="Clearances">The verdict on each clearance with the parts and pieces of the plan.</param>
/// <param name="Pairings">The verdict on each pairing with the parts of the plan.</param>
/// <param name="Snapshot">The unit as it would then be: every part of the plan is chosen in its place.</param>
/// <param name="Gap">How much better another plan could be at most, in what the objective counts first; 0 when it is proven.</param>
/// <param name="Reasons">Why this plan.</param>
public sealed record Plan(
    PlanObjective Objective,
    ImmutableArray<PlanLine> Lines,
    ImmutableArray<PlanWork> Work,
    PlanCost Cost,
    decimal Minutes,
    int ReadyInDays,
    ImmutableArray<PlanCondition> Conditions,
    ImmutableArray<PlanVerdict> Parts,
    ImmutableArray<PlanClearance> Clearances,
    ImmutableArray<PlanPairing> Pairings,
    UnitSnapshot Snapshot,
    long Gap,
    ImmutableArray<Reason> Reasons);

/// <summary>What goes into one place.</summary>
/// <param name="Position">The position.</param>
/// <param name="Index">Which of several like parts; a pack stands at 1 with all its pieces.</param>
/// <param name="Candidate">Id of the candidate; <c>found</c> for the part that came, <c>found+operation</c> after work on it, <c>series/member</c> for a piece.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Disposition">Reuse, rework or replace.</param>
/// <param name="Components">The part, or the pieces of a pack.</param>
/// <param name="Members">The members of the series, for pieces; else empty.</param>
/// <param name="Outcome">Whether the part conforms. Not assessed and inconclusive parts stand here with a condition, never as good.</param>
/// <param name="Price">Minor units; none when it is not known.</param>
/// <param name="Labour">Minor units for the work on it.</param>
/// <param name="Comeback">Its share of the expected comeback cost, minor units.</param>
/// <param name="LeadDays">Days until it is there.</param>
/// <param name="Vendor">Who sells it, if anyone.</param>
/// <param name="FromStock">Whether it is in the house.</param>
/// <param name="NextBest">The next best for this place, or none when nothing else would do.</param>
/// <param name="Reasons">Why.</param>
public sealed record PlanLine(
    string Position,
    int Index,
    string Candidate,
    PartSource Source,
    Disposition Disposition,
    ImmutableArray<Component> Components,
    ImmutableArray<string> Members,
    Outcome Outcome,
    long? Price,
    long Labour,
    long Comeback,
    int LeadDays,
    string? Vendor,
    bool FromStock,
    PlanNextBest? NextBest,
    ImmutableArray<Reason> Reasons);

/// <summary>What else would do in a place.</summary>
/// <param name="Candidate">Its id.</param>
/// <param name="Extra">How much more the whole plan would then cost, minor units; counted as the objective counts first when it is not the cost.</param>
public sealed record PlanNextBest(string Candidate, long Extra);

/// <summary>A piece of bench work.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Position">The position of the part; none for work on the whole unit.</param>
/// <param name="Index">Which of several like parts.</param>
/// <param name="Minutes">Bench time.</param>
/// <param name="Change">The signed change of the dimension that is cut; none when nothing is.</param>
/// <param name="Datum">The face or axis it is taken from, for a cut.</param>
/// <param name="RemeasureGate">Characteristics to read again before the part goes on.</param>
/// <param name="Cautions">What can hurt a person or the part.</param>
public sealed record PlanWork(
    string Operation,
    string? Position,
    int Index,
    decimal Minutes,
    Length? Change,
    string? Datum,
    ImmutableArray<string> RemeasureGate,
    ImmutableArray<Text> Cautions);

/// <summary>What a plan costs, minor units.</summary>
/// <param name="Parts">Parts and pieces; those without a known price count as the request says.</param>
/// <param name="Labour">Bench time at the shop's rate, each operation rounded by itself, halves up.</param>
/// <param name="Comeback">Expected comeback cost, each risk rounded by itself, halves up.</param>
/// <param name="HasUnknownPrices">Whether a price is still to be asked for.</param>
public sealed record PlanCost(long Parts, long Labour, long Comeback, bool HasUnknownPrices)
{
    /// <summary>All together.</summary>
    public long Total => Parts + Labour + Comeback;
}

/// <summary>What must still be done before the plan holds.</summary>
/// <param name="Code"><c>measure-first</c>, <c>look-first</c>, <c>check-on-arrival</c>, <c>measure-again</c>, <c>pairing-open</c>, <c>pairing-condition</c> or <c>clearance-open</c>.</param>
/// <param name="Subject">What it is about: a place, a characteristic, a clearance or a pairing.</param>
/// <param name="Comeback">What the doubt is counted at, minor units.</param>
/// <param name="Reason">Why.</param>
public sealed record PlanCondition(string Code, string Subject, long Comeback, Reason Reason);

/// <summary>The verdict on one part of a plan.</summary>
/// <param name="Position">Where.</param>
/// <param name="Index">Which of several like parts.</param>
/// <param name="Outcome">The worst of its verdicts.</param>
/// <param name="Verdicts">What its readings say.</param>
public sealed record PlanVerdict(string Position, int Index, Outcome Outcome, ImmutableArray<Verdict> Verdicts);

/// <summary>One clearance with the parts and pieces of a plan.</summary>
/// <param name="Loop">The clearance.</param>
/// <param name="Outcome">Its outcome.</param>
/// <param name="Gap">Its gap; none when it is not known.</param>
/// <param name="Against">Its window.</param>
/// <param name="Probability">Chance that it lies in its window.</param>
public sealed record PlanClearance(string Loop, Outcome Outcome, Length? Gap, Limits? Against, double? Probability);

/// <summary>One pairing with the parts of a plan.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Outcome">Its outcome.</param>
/// <param name="Severity">What it costs when it does not hold.</param>
/// <param name="Reasons">Why.</param>
public sealed record PlanPairing(string Rule, Compatibility Outcome, Severity Severity, ImmutableArray<Reason> Reasons);

/// <summary>Demands that can't all be met. Without any one of them the others can, where that is proven.</summary>
/// <param name="Demands">The demands.</param>
/// <param name="Reason">In plain words.</param>
public sealed record PlanConflict(ImmutableArray<PlanDemand> Demands, Reason Reason)
{
    /// <summary>Whether each was tried; else a limit stopped the search, and fewer of them may conflict already.</summary>
    public bool IsSmallest { get; init; } = true;
}

/// <summary>Something that a plan must meet.</summary>
/// <param name="Id">What it is about: a place, a pairing, a clearance, a set, a limit of the request.</param>
/// <param name="Kind">What sort of demand.</param>
/// <param name="Reason">In plain words.</param>
public sealed record PlanDemand(string Id, DemandKind Kind, Reason Reason);

/// <summary>What sort of demand.</summary>
public enum DemandKind
{
    /// <summary>The part in a place conforms.</summary>
    Part,

    /// <summary>A pairing holds.</summary>
    Pairing,

    /// <summary>A clearance lies in its window.</summary>
    Clearance,

    /// <summary>Parts stay together.</summary>
    Set,

    /// <summary>No more is used than there is.</summary>
    Stock,

    /// <summary>A limit of the request: cost, days, what stays, what goes in, what stays out.</summary>
    Limit,
}

/// <summary>One thing after which there is a plan.</summary>
/// <param name="What">What sort of thing.</param>
/// <param name="Subject">The position to buy or work for, or the demand to relax.</param>
/// <param name="Cost">What the plan then costs, parts bought for it not counted; minor units.</param>
/// <param name="Reason">In plain words.</param>
public sealed record PlanUnlock(UnlockKind What, string Subject, long Cost, Reason Reason)
{
    /// <summary>What one dimension must read, where reading it is the one thing; none otherwise.</summary>
    public UnlockReading? Reading { get; init; }
}

/// <summary>What one dimension must read so that there is a plan. Both ends were tried on the whole unit, and so was what lies just outside: there is none then.</summary>
/// <param name="Low">The lowest reading with which there is a plan.</param>
/// <param name="High">The highest.</param>
/// <param name="Readings">How many readings, all alike and to <paramref name="Step"/>, that supposes.</param>
/// <param name="Step">How finely it is read.</param>
/// <param name="Chance">Chance, 0..1, that it lies there by what is known of it now; none when nothing is.</param>
public sealed record UnlockReading(Length Low, Length High, int Readings, Length Step, double? Chance);

/// <summary>What sort of thing opens the way to a plan.</summary>
public enum UnlockKind
{
    /// <summary>A part is bought.</summary>
    Purchase,

    /// <summary>A part is worked on.</summary>
    Rework,

    /// <summary>A demand of the request is dropped.</summary>
    RelaxedLimit,

    /// <summary>Something is read or looked at, and proves good.</summary>
    Measurement,
}

/// <summary>What it would be worth to know better before deciding (value of information).</summary>
/// <param name="Position">The place.</param>
/// <param name="Index">Which of several like parts.</param>
/// <param name="Candidate">The candidate in doubt; it need not be in the plan.</param>
/// <param name="Read">What to read or look at: characteristics, or the place itself.</param>
/// <param name="ChanceGood">Chance that it proves good, 0..1.</param>
/// <param name="CostIfGood">What the best plan then costs, minor units.</param>
/// <param name="CostIfBad">What the best plan then costs, minor units; none when there then is none.</param>
/// <param name="Value">Cost now less the expected cost after reading it, rounded down, minor units; not negative.</param>
/// <param name="IsInPlan">Whether the plan hangs on it.</param>
/// <param name="Reason">In plain words.</param>
public sealed record MeasuringValue(
    string Position,
    int Index,
    string Candidate,
    ImmutableArray<string> Read,
    double ChanceGood,
    long CostIfGood,
    long? CostIfBad,
    long Value,
    bool IsInPlan,
    Reason Reason);
