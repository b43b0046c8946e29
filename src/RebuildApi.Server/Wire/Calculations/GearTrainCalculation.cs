using System.Collections.Immutable;
using RebuildApi.Engine.Mechanics;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Wire.Calculations;

/// <summary>A family's gears, or a chain of meshes. Exactly one of family and meshes.</summary>
/// <param name="Family">Id of the family.</param>
/// <param name="Gear">Only this gear of the family.</param>
/// <param name="Meshes">Meshes in the order of the power.</param>
public sealed record GearTrainRequest([Id] string? Family = null, [Id] string? Gear = null, [Entries(1, 20)] ImmutableArray<MeshRequest>? Meshes = null);

/// <summary>One mesh.</summary>
/// <param name="Driver">Teeth of the driver.</param>
/// <param name="Driven">Teeth of the driven.</param>
public sealed record MeshRequest([Between(1, 1000)] int Driver, [Between(1, 1000)] int Driven);

/// <summary>How gears carry their power.</summary>
/// <param name="Ratio">Turns of the input for one of the output, for a chain of meshes.</param>
/// <param name="Gears">Each gear of the family.</param>
public sealed record GearTrainWire(double? Ratio, ImmutableArray<GearPathWire> Gears);

/// <summary>How one gear carries its power.</summary>
/// <param name="Gear">Its name.</param>
/// <param name="Ratio">Turns of the input for one of the output; negative when the output turns the other way.</param>
/// <param name="Path">Its meshes, from the input on; empty for direct.</param>
/// <param name="UnderLoad">Positions whose teeth carry load.</param>
/// <param name="PocketSpeed">Speed of input shaft and output shaft against each other for one turn of the input; 0 in direct.</param>
public sealed record GearPathWire(string Gear, double? Ratio, ImmutableArray<MeshInPathWire> Path, ImmutableArray<string> UnderLoad, double? PocketSpeed)
{
    /// <summary>From the engine.</summary>
    public static GearPathWire From(GearPath p) => new(
        p.Gear, Numbers.Finite(p.Ratio),
        [.. p.Path.Select(m => new MeshInPathWire(m.Mesh, m.Driver, m.Driven, m.DriverTeeth, m.DrivenTeeth, Numbers.Finite(m.SpeedIn), Numbers.Finite(m.TorqueIn)))],
        p.UnderLoad, Numbers.Finite(p.PocketSpeed));
}

/// <summary>One mesh in the path of a gear's power.</summary>
/// <param name="Mesh">The family's mesh.</param>
/// <param name="Driver">The driving row.</param>
/// <param name="Driven">The driven row.</param>
/// <param name="DriverTeeth">Teeth of the driver.</param>
/// <param name="DrivenTeeth">Teeth of the driven.</param>
/// <param name="SpeedIn">Speed of the driver for one turn of the input.</param>
/// <param name="TorqueIn">Torque on the driver for one unit of input torque, losses left out.</param>
public sealed record MeshInPathWire(string Mesh, string Driver, string Driven, int DriverTeeth, int DrivenTeeth, double? SpeedIn, double? TorqueIn);
