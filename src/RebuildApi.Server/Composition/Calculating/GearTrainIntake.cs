using System.Collections.Immutable;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Calculations;

namespace RebuildApi.Server.Composition;

/// <summary>Works out the ratio of a chain of meshes, or the gears of a family.</summary>
public sealed class GearTrainIntake(GearTrainRequest sent, FamilyBook families, Complaints complaints)
{
    /// <summary>The gears; null with complaints.</summary>
    public GearTrainWire? Read()
    {
        if (sent.Family is null == sent.Meshes is null)
        {
            complaints.Add("", FieldProblems.Contradiction, "Exactly one of family and meshes is needed.");
            return null;
        }

        if (sent.Meshes is { } meshes)
            return OfMeshes(meshes);
        if (families.Find(sent.Family!) is { } index)
            return OfFamily(index.Family);
        complaints.AddUnknown("/family", Problems.UnknownFamily, $"There is no family {sent.Family}.", sent.Family!, [.. families.All.Select(f => f.Family.Version.Id)]);
        return null;
    }

    private GearTrainWire? OfMeshes(ImmutableArray<MeshRequest> meshes)
    {
        if (sent.Gear is null)
            return new GearTrainWire(Numbers.Finite(GearTrain.Ratio(meshes.Select(m => (m.Driver, m.Driven)))), []);
        complaints.Add("/gear", FieldProblems.Contradiction, "A gear is one of a family.");
        return null;
    }

    private GearTrainWire? OfFamily(Contracts.Family family)
    {
        var gears = GearTrain.All(family);
        if (sent.Gear is null)
            return new GearTrainWire(null, [.. gears.Select(GearPathWire.From)]);
        if (gears.FirstOrDefault(g => g.Gear == sent.Gear) is { } one)
            return new GearTrainWire(null, [GearPathWire.From(one)]);
        complaints.AddUnknown("/gear", FieldProblems.UnknownGear, $"The family has no gear {sent.Gear} that its meshes name.", sent.Gear, [.. gears.Select(g => g.Gear)]);
        return null;
    }
}
