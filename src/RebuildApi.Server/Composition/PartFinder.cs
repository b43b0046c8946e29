using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition;

/// <summary>
/// Finds the part that a client means by its place or its id, inside one change. A reading or a finding at a place where no part is recorded
/// yet records the part: it was found there.
/// </summary>
public sealed class PartFinder(IWriteSession session, UnitFile file, FamilyIndex family, IIdSource ids, Complaints complaints)
{
    private readonly Dictionary<Place, Component> _at = Latest(file);
    private readonly Dictionary<string, Component> _byId = file.Components.ToDictionary(c => c.Id, StringComparer.Ordinal);
    private readonly List<ComponentAtPlace> _made = [];

    /// <summary>The parts that were recorded on the way.</summary>
    public ImmutableArray<ComponentAtPlace> Made => [.. _made];

    /// <summary>The part at a place or of an id; null with a complaint when neither names one.</summary>
    public Component? Find(string? place, string? component, string pointer, string placeField)
    {
        if (place is not null == component is not null)
        {
            complaints.Add(pointer, FieldProblems.Contradiction, $"Exactly one of {placeField} and component says which part is meant.");
            return null;
        }

        return place is not null ? AtPlace(Place.Parse(place), pointer + "/" + placeField) : ById(component!, pointer + "/component");
    }

    /// <summary>The position of a place, when the family has it; else null with a complaint.</summary>
    public static Position? PositionOf(Place place, FamilyIndex family, string pointer, Complaints complaints)
    {
        if (!family.Positions.TryGetValue(place.Position, out var position))
            complaints.AddUnknown(pointer, FieldProblems.UnknownPosition, $"The family has no position {place.Position}.", place.Position, family.Positions.Keys);
        else if (place.Index < 1 || place.Index > position.Quantity)
            complaints.Add(pointer, FieldProblems.OutOfRange, $"The position {place.Position} holds {position.Quantity}; #1 to #{position.Quantity} name them.", place.ToString());
        else
            return position;
        return null;
    }

    private Component? ById(string id, string pointer)
    {
        if (_byId.TryGetValue(id, out var known))
            return known;
        complaints.AddUnknown(pointer, FieldProblems.UnknownComponent, $"There is no part {id} in this unit.", id, _byId.Keys);
        return null;
    }

    private Component? AtPlace(Place place, string pointer)
    {
        if (_at.TryGetValue(place, out var known))
            return known;
        if (PositionOf(place, family, pointer, complaints) is not { } position)
            return null;
        if (complaints.Any)
            return null;
        var made = new Component(ids.Next(), 1, position.Kind, Origin.Unit, ImmutableSortedDictionary<string, string>.Empty, null);
        var placement = new Placement(place.Position, place.Index, made.Id, PlacementRole.Found, Facing.Unspecified, null);
        session.Add(file.Unit.Id, made);
        session.Place(file.Unit.Id, placement);
        _at[place] = made;
        _byId[made.Id] = made;
        _made.Add(new ComponentAtPlace(made, placement));
        return made;
    }

    private static Dictionary<Place, Component> Latest(UnitFile file)
    {
        var components = file.Components.GroupBy(c => c.Id).ToDictionary(g => g.Key, g => g.MaxBy(c => c.Revision)!);
        return file.Placements
            .Where(p => components.ContainsKey(p.Component))
            .GroupBy(p => new Place(p.Position, p.Index))
            .ToDictionary(g => g.Key, g => components[g.MaxBy(p => p.Role)!.Component]);
    }
}

/// <summary>A part that was recorded, and where.</summary>
/// <param name="Component">The part.</param>
/// <param name="Placement">Where it was found.</param>
public sealed record ComponentAtPlace(Component Component, Placement Placement);
