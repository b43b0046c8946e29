using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire;

/// <summary>One physical part.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Revision">1 as it came; one more after each rework.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Label">What is written on it or its bag.</param>
/// <param name="Attributes">Attribute to value, as declared.</param>
/// <param name="Placements">Where it was found, is to go, or went in.</param>
public sealed record ComponentWire(
    string Id,
    int Revision,
    string Kind,
    Origin Origin,
    string? Label,
    IReadOnlyDictionary<string, string> Attributes,
    ImmutableArray<PlacementWire> Placements)
{
    /// <summary>From the contract.</summary>
    public static ComponentWire From(Component component, IEnumerable<Placement> placements) => new(
        component.Id, component.Revision, component.Kind, component.Origin, component.Label, component.Attributes,
        [.. placements.Where(p => p.Component == component.Id).Select(PlacementWire.From)]);
}

/// <summary>Where a part is.</summary>
/// <param name="Position">The position.</param>
/// <param name="Index">1 to the position's quantity.</param>
/// <param name="Role">Found there, chosen to go there, or fitted there.</param>
/// <param name="Facing">Which way round.</param>
/// <param name="IndexMark">The mark that says how it sat on its mate.</param>
public sealed record PlacementWire(string Position, int Index, PlacementRole Role, Facing Facing, string? IndexMark) : IInWords
{
    /// <summary>From the contract.</summary>
    public static PlacementWire From(Placement p) => new(p.Position, p.Index, p.Role, p.Facing, p.IndexMark);

    /// <inheritdoc/>
    public string InWords() => $"{Role.ToString().ToLowerInvariant()} {Position}#{Index}";
}

/// <summary>A part to be recorded in a position, or a known part to be placed in another.</summary>
/// <param name="Position">The position; the second of several like parts has <c>#2</c> behind it.</param>
/// <param name="Role">Found there, chosen to go there, or fitted there.</param>
/// <param name="Id">An id of the client's own, or that of a part that the shop has already.</param>
/// <param name="Origin">Where it came from.</param>
/// <param name="Attributes">Attribute to value, as declared by its maker or seller; what was seen belongs in findings.</param>
/// <param name="Label">What is written on it or its bag.</param>
/// <param name="Facing">Which way round.</param>
/// <param name="IndexMark">The mark that says how it sat on its mate.</param>
public sealed record ComponentRequest(
    [Words(70)] string Position,
    PlacementRole Role = PlacementRole.Found,
    [Id] string? Id = null,
    Origin Origin = Origin.Unit,
    IReadOnlyDictionary<string, string>? Attributes = null,
    [Words(100)] string? Label = null,
    Facing Facing = Facing.Unspecified,
    [Words(60)] string? IndexMark = null);

/// <summary>A new revision of a part after rework; readings of the old one stay with the old one.</summary>
/// <param name="Attributes">Attributes that the rework changed.</param>
/// <param name="Label">What is written on it now.</param>
public sealed record RevisionRequest(IReadOnlyDictionary<string, string>? Attributes = null, [Words(100)] string? Label = null);
