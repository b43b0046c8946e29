using System.Collections.Immutable;

namespace RebuildApi.Storage;

/// <summary>A part that is out of the house to be machined.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit that it belongs to.</param>
/// <param name="Position">Where it sits in the unit.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">Its revision when it went out.</param>
/// <param name="Operation">The operation of the family, if it is one.</param>
/// <param name="Instruction">What is to be done: face, sign, amount, datum.</param>
/// <param name="At">Who does it.</param>
/// <param name="Out">When it went out, UTC.</param>
/// <param name="Due">The day it is due back.</param>
/// <param name="Back">When it came back, UTC; none while it is out.</param>
/// <param name="Remeasure">What must be read again before it goes on.</param>
/// <param name="Price">What is charged for it without tax, in whole minor units.</param>
/// <param name="Person">Who sent it.</param>
/// <param name="Version">Row version.</param>
public sealed record Machining(
    string Id,
    string Unit,
    string Position,
    string Component,
    int Revision,
    string? Operation,
    string Instruction,
    string At,
    DateTimeOffset Out,
    DateOnly Due,
    DateTimeOffset? Back,
    ImmutableArray<string> Remeasure,
    long Price,
    string Person,
    long Version) : IShopRecord<Machining>
{
    /// <inheritdoc/>
    public static ShopTable<Machining> Table { get; } = new("machining", isEdited: true, StoreJson.Default.Machining);

    string IShopRecord<Machining>.OfUnit => Unit;

    string IShopRecord<Machining>.About => Component;

    Machining IShopRecord<Machining>.At(long version) => this with { Version = version };
}

/// <summary>Minutes that a piece of work really took.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Position">Where, if at one place.</param>
/// <param name="Minutes">How long.</param>
/// <param name="Person">Who did it.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
public sealed record WorkDone(
    string Id, string Unit, string Operation, string? Position, decimal Minutes, string Person, string Bench, DateTimeOffset Time) : IShopRecord<WorkDone>
{
    /// <inheritdoc/>
    public static ShopTable<WorkDone> Table { get; } = new("work", isEdited: false, StoreJson.Default.WorkDone);

    string IShopRecord<WorkDone>.OfUnit => Unit;

    string IShopRecord<WorkDone>.About => Operation;

    long IShopRecord<WorkDone>.Version => 1;

    WorkDone IShopRecord<WorkDone>.At(long version) => this;
}
