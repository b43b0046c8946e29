using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>A plan as it was worked out. Never edited: a new one is worked out instead.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Objective">What it was best at: <c>cost</c>, <c>time</c>, <c>original</c>, <c>conservative</c>.</param>
/// <param name="Person">Who asked.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="InputsSha256">Canonical hash of the snapshot it was made from.</param>
/// <param name="OffersSha256">Hash of the prices and the shelf it was made from.</param>
/// <param name="Body">The plan as it was answered, as JSON.</param>
/// <param name="Lines">What it needs, to be quoted and ordered.</param>
/// <param name="Days">Days until the last part is at the bench.</param>
public sealed record KeptPlan(
    string Id,
    string Unit,
    string Objective,
    string Person,
    DateTimeOffset Time,
    string InputsSha256,
    string OffersSha256,
    string Body,
    ImmutableArray<Needed> Lines,
    int Days) : IShopRecord<KeptPlan>
{
    /// <summary>The unit as it would be with the plan, as JSON of the contract; none when there is no plan, or it was kept before this was.</summary>
    public string? Snapshot { get; init; }

    /// <inheritdoc/>
    public static ShopTable<KeptPlan> Table { get; } = new("plan", isEdited: false, StoreJson.Default.KeptPlan);

    string IShopRecord<KeptPlan>.OfUnit => Unit;

    string IShopRecord<KeptPlan>.About => Objective;

    long IShopRecord<KeptPlan>.Version => 1;

    KeptPlan IShopRecord<KeptPlan>.At(long version) => this;
}

/// <summary>Something that a plan needs, priced by itself in whole minor units.</summary>
/// <param name="Id">Unique within its plan or quote.</param>
/// <param name="Sort"><c>part</c>, <c>stock</c>, <c>labour</c>, <c>machining</c>, <c>core-deposit</c> or <c>other</c>.</param>
/// <param name="Text">What it is, in words.</param>
/// <param name="Need"><c>required</c>, <c>recommended</c> or <c>optional</c>.</param>
/// <param name="Chance">Chance that it will be needed at all; 1 when that is settled.</param>
/// <param name="Quantity">How much: pieces, or minutes.</param>
/// <param name="Measure">Of what: <c>piece</c> or <c>minute</c>.</param>
/// <param name="Price">Price without tax of <paramref name="Per"/>; none while it is still to be asked for.</param>
/// <param name="Per">How many units the price is for.</param>
/// <param name="Tax">Its tax.</param>
/// <param name="Positions">Where it goes.</param>
/// <param name="Part">Number in the price list, if it is ordered.</param>
/// <param name="Stock">What it is on the shelf, if it is taken from there.</param>
/// <param name="Operation">Which operation, if it is work.</param>
public sealed record Needed(
    string Id,
    string Sort,
    string Text,
    string Need,
    decimal Chance,
    decimal Quantity,
    string Measure,
    long? Price,
    decimal Per,
    Tax Tax,
    ImmutableArray<string> Positions,
    string? Part,
    string? Stock,
    string? Operation);

/// <summary>That a person of the shop chose a plan to be built, and signs for it.</summary>
/// <param name="Id">Its id; sorts by time.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Person">Who signs.</param>
/// <param name="Reason">Why this one, in their own words, if said.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PlanChoice(string Id, string Unit, string Plan, string Person, string? Reason, DateTimeOffset Time) : IShopRecord<PlanChoice>
{
    /// <inheritdoc/>
    public static ShopTable<PlanChoice> Table { get; } = new("plan-choice", isEdited: false, StoreJson.Default.PlanChoice);

    string IShopRecord<PlanChoice>.OfUnit => Unit;

    string IShopRecord<PlanChoice>.About => Plan;

    long IShopRecord<PlanChoice>.Version => 1;

    PlanChoice IShopRecord<PlanChoice>.At(long version) => this;
}
