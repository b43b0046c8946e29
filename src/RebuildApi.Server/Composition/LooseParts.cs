using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Makes a snapshot of parts that are only spoken of, so that they are judged exactly as those of a unit.</summary>
public sealed class LooseParts(FamilyIndex family, Policy policy, Complaints complaints)
{
    private readonly ImmutableArray<Component>.Builder _components = ImmutableArray.CreateBuilder<Component>();
    private readonly ImmutableArray<Placement>.Builder _placements = ImmutableArray.CreateBuilder<Placement>();
    private readonly ImmutableArray<Measurement>.Builder _measurements = ImmutableArray.CreateBuilder<Measurement>();

    /// <summary>The snapshot; what does not fit the family is complained of.</summary>
    public UnitSnapshot Of(ImmutableArray<LoosePartRequest> parts)
    {
        for (var i = 0; i < parts.Length; i++)
            Add(parts[i], Pointer.Entry("/parts", i));
        return new UnitSnapshot(
            "loose", family.Family.Version, [], _components.ToImmutable(), _placements.ToImmutable(), _measurements.ToImmutable(), [], [], [], policy.Of(family.Family.Version.Id));
    }

    private void Add(LoosePartRequest sent, string pointer)
    {
        var place = Place.Parse(sent.Position);
        if (PartFinder.PositionOf(place, family, pointer + "/position", complaints) is not { } position)
            return;
        var id = place.ToString();
        if (_components.Any(c => c.Id == id))
        {
            complaints.Add(pointer + "/position", FieldProblems.DuplicateField, $"Two parts are said to sit at {id}.", id);
            return;
        }

        var part = new SpokenParts(family, complaints).Of(id, position.Kind, sent.Attributes, sent.Readings, pointer);
        _components.Add(part.Component);
        _placements.Add(new Placement(place.Position, place.Index, id, PlacementRole.Chosen, Facing.Unspecified, null));
        _measurements.AddRange(part.Measurements);
    }
}
