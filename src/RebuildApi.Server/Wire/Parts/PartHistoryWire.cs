using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire.Parts;

/// <summary>One part over all units of the shop.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Revision">Its newest revision.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Label">What is written on it or its bag.</param>
/// <param name="Code">The code that the shop gave it.</param>
/// <param name="Unit">The unit that it is in: found there and not taken out, or fitted.</param>
/// <param name="Shelf">The entry of the shelf that it lies under.</param>
/// <param name="Revisions">Its revisions, oldest first.</param>
/// <param name="Places">Where it has been, oldest first.</param>
/// <param name="Removals">When it was taken out of units, oldest first.</param>
public sealed record PartHistoryWire(
    string Id,
    string Kind,
    int Revision,
    Origin Origin,
    string? Label,
    string? Code,
    string? Unit,
    string? Shelf,
    ImmutableArray<PartRevisionWire> Revisions,
    ImmutableArray<PartPlaceWire> Places,
    ImmutableArray<PartRemovalWire> Removals)
{
    /// <summary>From the store.</summary>
    public static PartHistoryWire From(PartFile file, string? code, StockItem? shelf)
    {
        var now = file.Revisions[^1].Component;
        var stands = file.Places.LastOrDefault(p => p.Until is null && p.Placement.Role != PlacementRole.Chosen);
        return new(
            now.Id, now.Kind, now.Revision, now.Origin, now.Label, code, stands?.Unit, shelf is { Count: > 0 } ? shelf.Id : null,
            [.. file.Revisions.Select(r => new PartRevisionWire(r.Component.Revision, r.Unit, r.Component.Label, r.Time))],
            [.. file.Places.Select(p => new PartPlaceWire(
                p.Unit, p.Placement.Position, p.Placement.Index, p.Placement.Role, p.Placement.Facing, p.Placement.IndexMark, p.Since, p.Until))],
            [.. file.Removals.Select(PartRemovalWire.From)]);
    }
}

/// <summary>One revision of a part.</summary>
/// <param name="Revision">1 as it came; one more after each rework.</param>
/// <param name="Unit">The unit that it was recorded in.</param>
/// <param name="Label">What was written on it.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PartRevisionWire(int Revision, string Unit, string? Label, DateTimeOffset Time);

/// <summary>A place that a part was in.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Position">The position.</param>
/// <param name="Index">1 to the position's quantity.</param>
/// <param name="Role">Found there, chosen to go there, or fitted there.</param>
/// <param name="Facing">Which way round.</param>
/// <param name="IndexMark">The mark that says how it sat on its mate.</param>
/// <param name="Since">From when on, UTC.</param>
/// <param name="Until">Until when, UTC; absent while it stands.</param>
public sealed record PartPlaceWire(
    string Unit, string Position, int Index, PlacementRole Role, Facing Facing, string? IndexMark, DateTimeOffset Since, DateTimeOffset? Until);

/// <summary>That a part was taken out of a unit for good.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Component">The part.</param>
/// <param name="Places">Where it was.</param>
/// <param name="To">Where it went.</param>
/// <param name="Reason">Why.</param>
/// <param name="Person">Who.</param>
/// <param name="Time">When, UTC.</param>
public sealed record PartRemovalWire(
    string Id, string Unit, string Component, ImmutableArray<string> Places, string To, string Reason, string Person, DateTimeOffset Time)
{
    /// <summary>From the store.</summary>
    public static PartRemovalWire From(PartRemoval r) => new(r.Id, r.Unit, r.Component, r.Places, r.To, r.Reason, r.Person, r.Time);
}

/// <summary>A part that is taken out of a unit for good.</summary>
/// <param name="To">Where it goes.</param>
/// <param name="Reason">Why.</param>
/// <param name="Person">Who.</param>
/// <param name="Id">An id of the client's own, or none to be given one.</param>
public sealed record PartRemovalRequest(
    [OneOf("shelf", "other-unit", "owner", "scrap")] string To, [Words(500)] string Reason, [Words(100)] string Person, [Id] string? Id = null);
