using System.Collections.Immutable;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>Something on the shelf that is kept for a unit.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Stock">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Person">Who asked for it.</param>
/// <param name="Until">When it lapses, UTC.</param>
/// <param name="Holds">Whether it holds now.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record ReservationWire(string Id, string Stock, int Count, string Person, DateTimeOffset Until, bool Holds, long Version)
{
    /// <summary>From the store.</summary>
    public static ReservationWire From(Reservation r, DateTimeOffset now) => new(r.Id, r.Stock, r.Count, r.Person, r.Until, r.Holds(now), r.Version);
}

/// <summary>Things on the shelf to be kept for a unit: those named, or those that a plan takes.</summary>
/// <param name="Person">Who asks.</param>
/// <param name="Plan">The plan whose picks are kept; the one that was chosen, or else the newest, where nothing is named.</param>
/// <param name="Items">What is kept.</param>
/// <param name="Hours">For how many hours; as the shop usually does where it is not said.</param>
public sealed record ReservationsRequest(
    [Words(100)] string Person, [Id] string? Plan = null, [Entries(1, 200)] ImmutableArray<ReservationItemRequest>? Items = null, [Between(1, 8760)] int? Hours = null);

/// <summary>Something to be kept.</summary>
/// <param name="Stock">What.</param>
/// <param name="Count">How many.</param>
public sealed record ReservationItemRequest([Id] string Stock, [Between(1, 1000000)] int Count = 1);

/// <summary>What is kept for a unit.</summary>
/// <param name="Items">The reservations.</param>
public sealed record ReservationsWire(ImmutableArray<ReservationWire> Items);

/// <summary>A reservation to be let go or to be held longer.</summary>
/// <param name="Released">True to let it go.</param>
/// <param name="Hours">From now on for how many hours it holds.</param>
public sealed record ReservationChangeRequest(bool Released = false, [Between(1, 8760)] int? Hours = null);

/// <summary>A part that is or was out to be machined.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Position">Where it sits in the unit.</param>
/// <param name="Component">The part.</param>
/// <param name="Revision">Its revision when it went out.</param>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Instruction">What is to be done.</param>
/// <param name="At">Who does it.</param>
/// <param name="Out">When it went out, UTC.</param>
/// <param name="Due">The day it is due back.</param>
/// <param name="Back">When it came back, UTC.</param>
/// <param name="Overdue">Whether it is still out after the day it was due.</param>
/// <param name="Price">What is charged for it, without tax.</param>
/// <param name="ToRemeasure">What must be read again before it goes on, and was not read since it came back.</param>
/// <param name="Person">Who sent it.</param>
/// <param name="Version">Grows by one with every change; the ETag carries it.</param>
public sealed record MachiningWire(
    string Id,
    string Position,
    string Component,
    int Revision,
    string? Operation,
    string Instruction,
    string At,
    DateTimeOffset Out,
    DateOnly Due,
    DateTimeOffset? Back,
    bool Overdue,
    MoneyWire Price,
    ImmutableArray<string> ToRemeasure,
    string Person,
    long Version);

/// <summary>A part that goes out to be machined.</summary>
/// <param name="Position">Where it sits in the unit; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Instruction">What is to be done: which face, how much, from which datum.</param>
/// <param name="At">Who does it.</param>
/// <param name="Due">The day it is due back.</param>
/// <param name="Person">Who sends it.</param>
/// <param name="Operation">The operation of the family; what it asks to be read again is asked for.</param>
/// <param name="Price">What is charged for it, without tax.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record MachiningRequest(
    [Words(70)] string Position,
    [Words(500)] string Instruction,
    [Words(100)] string At,
    DateOnly Due,
    [Words(100)] string Person,
    [Id] string? Operation = null,
    MoneyRequest? Price = null,
    [Id] string? Id = null);

/// <summary>Changes of a machining job; what is left out stays.</summary>
/// <param name="Back">When it came back.</param>
/// <param name="Due">The day it is due back.</param>
/// <param name="Price">What is charged for it, without tax.</param>
public sealed record MachiningChangeRequest(DateTimeOffset? Back = null, DateOnly? Due = null, MoneyRequest? Price = null);

/// <summary>Minutes that a piece of work really took.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Position">Where.</param>
/// <param name="Minutes">How long.</param>
/// <param name="Person">Who did it.</param>
/// <param name="Bench">Where.</param>
/// <param name="Time">When, UTC.</param>
public sealed record WorkWire(string Id, string Operation, string? Position, decimal Minutes, string Person, string Bench, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static WorkWire From(WorkDone w) => new(w.Id, w.Operation, w.Position, w.Minutes, w.Person, w.Bench, w.Time);
}

/// <summary>The work that was done on a unit, beside what was quoted.</summary>
/// <param name="Items">What was done.</param>
/// <param name="Next">The whole address of the next page; absent on the last.</param>
/// <param name="AsOf">When the list was read, UTC.</param>
/// <param name="Compared">Minutes done beside minutes quoted, by operation.</param>
public sealed record WorkListWire(ImmutableArray<WorkWire> Items, string? Next, DateTimeOffset AsOf, ImmutableArray<MinutesWire> Compared)
    : ListOf<WorkWire>(Items, Next, AsOf);

/// <summary>Minutes of one operation.</summary>
/// <param name="Operation">The operation.</param>
/// <param name="Quoted">What was quoted.</param>
/// <param name="Done">What it took so far.</param>
/// <param name="Over">How much more than quoted; negative where less.</param>
public sealed record MinutesWire(string Operation, decimal Quoted, decimal Done, decimal Over);

/// <summary>Work that was done.</summary>
/// <param name="Operation">The operation of the family.</param>
/// <param name="Minutes">How long it took; negative takes off what was written by mistake.</param>
/// <param name="Person">Who did it.</param>
/// <param name="Bench">Where.</param>
/// <param name="Position">On which part.</param>
/// <param name="Time">When; now where it is not said.</param>
public sealed record WorkRequest(
    [Id] string Operation,
    [Between(-100000, 100000)] decimal Minutes,
    [Words(100)] string Person,
    [Words(100)] string Bench,
    [Words(70)] string? Position = null,
    DateTimeOffset? Time = null);
