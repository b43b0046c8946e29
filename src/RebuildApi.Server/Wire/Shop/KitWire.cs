using System.Collections.Immutable;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Shop;

/// <summary>What to order and pull from stock so that a plan can be built, and how it is built.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Plan">The plan.</param>
/// <param name="StillStands">Whether the unit, the prices and the shelf are still what the plan was made from.</param>
/// <param name="Orders">What to order, vendor by vendor.</param>
/// <param name="ToAskFor">What no list of the shop names: to be asked for.</param>
/// <param name="Picks">What to take from the shelf, before anything is ordered.</param>
/// <param name="Work">The work in order, with minutes, datums, cautions, and what must be read again before a part goes on.</param>
/// <param name="Assembly">What goes where, with the ring or shim for each place.</param>
/// <param name="Tightening">What is tightened to what; the maker's data stands before it.</param>
/// <param name="Lubricants">What is filled in; the maker's data stands before it.</param>
/// <param name="Conditions">What must still be read, looked at or agreed before the plan holds.</param>
/// <param name="Cautions">What can hurt a person or the gearbox, and what stands before this answer.</param>
public sealed record KitWire(
    string Unit,
    string Plan,
    bool StillStands,
    ImmutableArray<VendorOrderWire> Orders,
    ImmutableArray<ToAskForWire> ToAskFor,
    ImmutableArray<PickWire> Picks,
    ImmutableArray<PlanWorkWire> Work,
    ImmutableArray<AssemblyWire> Assembly,
    ImmutableArray<FastenerWire> Tightening,
    ImmutableArray<LubricantWire> Lubricants,
    ImmutableArray<PlanConditionWire> Conditions,
    ImmutableArray<string> Cautions);

/// <summary>What to order from one vendor.</summary>
/// <param name="Vendor">The vendor.</param>
/// <param name="LeadDays">Days until the last of it is there.</param>
/// <param name="Net">What it comes to without tax.</param>
/// <param name="Lines">The lines.</param>
public sealed record VendorOrderWire(string Vendor, int LeadDays, MoneyWire Net, ImmutableArray<OrderLineWire> Lines);

/// <summary>One line to order.</summary>
/// <param name="Vendor">The vendor.</param>
/// <param name="Part">Number in the shop's price list.</param>
/// <param name="VendorNumber">What the vendor calls it.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Price">Price of one without tax.</param>
/// <param name="LeadDays">Days until it is there.</param>
/// <param name="Positions">Where it goes.</param>
/// <param name="Alternatives">What else would do there by the plan, and how much more the whole would then cost.</param>
public sealed record OrderLineWire(
    string Vendor, string Part, string? VendorNumber, string Name, int Quantity, MoneyWire Price, int LeadDays, ImmutableArray<string> Positions, ImmutableArray<AlternativeWire> Alternatives);

/// <summary>What else would do.</summary>
/// <param name="Position">Where.</param>
/// <param name="Candidate">What.</param>
/// <param name="Extra">How much more the whole plan would then cost.</param>
public sealed record AlternativeWire(string Position, string Candidate, MoneyWire Extra) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Position}: {Candidate}";
}

/// <summary>Something that no list of the shop names.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Positions">Where it goes.</param>
public sealed record ToAskForWire(string Name, int Quantity, ImmutableArray<string> Positions);

/// <summary>Something to take from the shelf.</summary>
/// <param name="Stock">What is written on it or its bin.</param>
/// <param name="Bin">Where it lies.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Positions">Where it goes.</param>
/// <param name="ReservedUntil">Until when it is kept for this unit; nothing when it is not.</param>
/// <param name="Short">How many are missing, since they were taken or are kept for another unit.</param>
public sealed record PickWire(string Stock, string? Bin, string Name, int Quantity, ImmutableArray<string> Positions, DateTimeOffset? ReservedUntil, int Short);

/// <summary>What goes into one place.</summary>
/// <param name="Position">The place.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Fit">What goes in.</param>
/// <param name="Disposition">Reuse, rework or replace.</param>
/// <param name="Pieces">Rings, shims or washers, with the thickness of each.</param>
/// <param name="HeldBy">The lines of the tightening list that hold it.</param>
public sealed record AssemblyWire(string Position, string Name, string Fit, string Disposition, ImmutableArray<PieceWire> Pieces, ImmutableArray<string> HeldBy);

/// <summary>A ring, shim or washer.</summary>
/// <param name="Member">What it is sold as.</param>
/// <param name="Thickness">Its thickness; read each before it goes in.</param>
public sealed record PieceWire(string Member, QuantityWire Thickness) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Member} ({Thickness.Value.Text} {Thickness.Unit})";
}

/// <summary>Which unit gets what from the shelf.</summary>
/// <param name="Units">The units; every unit in the shop with a chosen plan where none is named.</param>
/// <param name="Without">Things on the shelf that are left alone.</param>
public sealed record AllocationRequest([Entries(1, 200)][Id] ImmutableArray<string>? Units = null, [Entries(0, 1000)][Id] ImmutableArray<string>? Without = null);

/// <summary>Which part goes where, so that the most units are completed, and of all such ways the cheapest.</summary>
/// <param name="Completed">The units that can be completed.</param>
/// <param name="Assigned">What goes where.</param>
/// <param name="Cost">What it comes to without tax.</param>
/// <param name="Proven">Whether nothing completes more units, and nothing as many for less.</param>
/// <param name="MostUnits">No way completes more units than this.</param>
/// <param name="Misses">Each unit that is not completed, and what it lacks.</param>
/// <param name="Purchases">Single purchases that would complete more units, the most useful first.</param>
/// <param name="Reasons">How it was found, and what was passed over.</param>
/// <param name="Cautions">What stands before this answer.</param>
public sealed record AllocationWire(
    ImmutableArray<string> Completed,
    ImmutableArray<AssignedWire> Assigned,
    MoneyWire Cost,
    bool Proven,
    int MostUnits,
    ImmutableArray<AllocationMissWire> Misses,
    ImmutableArray<AllocationPurchaseWire> Purchases,
    ImmutableArray<ReasonWire> Reasons,
    ImmutableArray<string> Cautions);

/// <summary>A part that goes to a unit.</summary>
/// <param name="Stock">What is on the shelf.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Position">The place.</param>
/// <param name="Cost">Its price, and what its doubt is expected to cost.</param>
public sealed record AssignedWire(string Stock, string Unit, string Position, MoneyWire Cost);

/// <summary>A unit that is not completed.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Lacking">The places that stay empty.</param>
/// <param name="Text">In words.</param>
/// <param name="Near">What of the right kind is on the shelf, and why the unit does not get it.</param>
public sealed record AllocationMissWire(string Unit, ImmutableArray<string> Lacking, string Text, ImmutableArray<NearMissWire> Near);

/// <summary>Something of the right kind that does not go there.</summary>
/// <param name="Position">The place.</param>
/// <param name="Stock">What is on the shelf.</param>
/// <param name="Text">Why not.</param>
public sealed record NearMissWire(string Position, string Stock, string Text) : IInWords
{
    /// <inheritdoc/>
    public string InWords() => $"{Stock}: {Text}";
}

/// <summary>A purchase that would complete more units.</summary>
/// <param name="Position">What it is for.</param>
/// <param name="Units">The units of which any one would be completed by one such part.</param>
/// <param name="Text">In words.</param>
public sealed record AllocationPurchaseWire(string Position, ImmutableArray<string> Units, string Text);
