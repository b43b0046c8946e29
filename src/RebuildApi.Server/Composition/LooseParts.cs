using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Composition;

/// <summary>Makes a snapshot of parts that are only spoken of, so that they are judged exactly as those of a unit.</summary>
public sealed class LooseParts(FamilyIndex family, Complaints complaints)
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
            "loose", family.Family.Version, [], _components.ToImmutable(), _placements.ToImmutable(), _measurements.ToImmutable(), [], [], [], Policy.Default);
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

        var attributes = sent.Attributes ?? ImmutableSortedDictionary<string, string>.Empty;
        foreach (var (attribute, value) in attributes)
        {
            var at = Pointer.Member(pointer + "/attributes", attribute);
            AttributeCheck.Check(family.Kinds[position.Kind], attribute, value, at, at, complaints);
        }

        _components.Add(new Component(id, 1, position.Kind, Origin.Shelf, attributes, null));
        _placements.Add(new Placement(place.Position, place.Index, id, PlacementRole.Chosen, Facing.Unspecified, null));
        var readings = sent.Readings ?? [];
        for (var i = 0; i < readings.Length; i++)
            Read(id, position.Kind, readings[i], $"{pointer}/readings/{i}");
    }

    private void Read(string component, string kind, LooseReadingRequest sent, string pointer)
    {
        if (family.CharacteristicOf(kind, sent.Characteristic) is not { } characteristic)
        {
            complaints.AddUnknown(pointer + "/characteristic", FieldProblems.UnknownCharacteristic, $"A {kind} has no characteristic {sent.Characteristic}.",
                sent.Characteristic, [.. family.Kinds[kind].Characteristics.Select(c => c.Id)]);
            return;
        }

        if (sent.Reading.ToContract(characteristic.Dimension, pointer + "/reading", complaints) is { } reading)
        {
            _measurements.Add(new Measurement(
                $"m{_measurements.Count + 1}", component, 1, characteristic.Id, [reading], new Taken(null, null, "", "", DateTimeOffset.UnixEpoch, null), null));
        }
    }
}
