using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Mechanics;

/// <summary>One mesh in the path of a gear's power.</summary>
/// <param name="Mesh">Id of the family's mesh.</param>
/// <param name="Driver">The driving row.</param>
/// <param name="Driven">The driven row.</param>
/// <param name="DriverTeeth">z of the driver.</param>
/// <param name="DrivenTeeth">z of the driven.</param>
/// <param name="SpeedIn">Speed of the driver for one turn of the input; negative turns the other way.</param>
/// <param name="TorqueIn">Torque on the driver for one unit of input torque, losses left out.</param>
public sealed record MeshInPath(string Mesh, string Driver, string Driven, int DriverTeeth, int DrivenTeeth, double SpeedIn, double TorqueIn);

/// <summary>How one gear carries its power.</summary>
/// <param name="Gear">Its name: <c>third</c>.</param>
/// <param name="Ratio">Turns of the input for one of the output; negative when the output turns the other way; 1 for a gear without meshes.</param>
/// <param name="Path">Its meshes, from the input on; empty for direct.</param>
/// <param name="UnderLoad">Positions whose teeth carry load.</param>
/// <param name="PocketSpeed">
/// Speed of input shaft and output shaft against each other for one turn of the input: 1 − 1/ratio. The rollers between them turn at it; in
/// direct it is 0, so that their noise goes away.
/// </param>
public sealed record GearPath(string Gear, double Ratio, ImmutableArray<MeshInPath> Path, ImmutableArray<string> UnderLoad, double PocketSpeed);

/// <summary>Ratios, speeds and the way of the power through a family's meshes, gear by gear. Arithmetic of tooth counts; losses left out.</summary>
public static class GearTrain
{
    /// <summary>The path of one gear.</summary>
    /// <returns>Null when a row of its meshes declares no teeth, or its meshes do not follow on each other.</returns>
    public static GearPath? Of(Family family, string gear)
    {
        var meshes = family.Meshes.Where(m => m.Gears.Contains(gear)).ToImmutableArray();
        if (InOrder(meshes) is not { } ordered)
            return null;
        var path = new List<MeshInPath>();
        double speed = 1, torque = 1;
        foreach (var mesh in ordered)
        {
            if (Teeth(family, mesh.Driver) is not { } driver || Teeth(family, mesh.Driven) is not { } driven)
                return null;
            path.Add(new MeshInPath(mesh.Id, mesh.Driver, mesh.Driven, driver, driven, speed, torque));
            speed *= -(double)driver / driven;
            torque *= -(double)driven / driver;
        }

        return new GearPath(gear, 1 / speed, [.. path], UnderLoad(path), 1 - speed);
    }

    /// <summary>The path of every gear that the family's meshes name, and of those named besides, as direct.</summary>
    public static ImmutableArray<GearPath> All(Family family, params IEnumerable<string> directGears) =>
    [
        .. family.Meshes.SelectMany(m => m.Gears).Concat(directGears).Distinct(StringComparer.Ordinal).Select(g => Of(family, g)).OfType<GearPath>(),
    ];

    /// <summary>Ratio of a chain of meshes, without sign: Π driven / Π driver.</summary>
    public static double Ratio(params IEnumerable<(int Driver, int Driven)> chain) => chain.Aggregate(1.0, (r, m) => r * m.Driven / m.Driver);

    /// <summary>Mesh frequency, Hz: f = z·n/60.</summary>
    public static double MeshFrequency(int teeth, double revolutionsPerMinute) => teeth * Math.Abs(revolutionsPerMinute) / 60;

    /// <summary>Whether a ratio is that of its set within a tolerance, as a share of the ratio wanted.</summary>
    public static bool IsConsistent(double ratio, double wanted, double tolerance) => Math.Abs(ratio - wanted) <= tolerance * Math.Abs(wanted);

    /// <summary>Each mesh after the one whose driven part it drives from; null when they do not make one chain.</summary>
    private static ImmutableArray<GearMesh>? InOrder(ImmutableArray<GearMesh> meshes)
    {
        var left = meshes.ToList();
        var ordered = ImmutableArray.CreateBuilder<GearMesh>();
        while (left.Count > 0)
        {
            var next = ordered.Count == 0
                ? left.FirstOrDefault(m => left.All(o => PartOf(o.Driven) != PartOf(m.Driver)))
                : left.FirstOrDefault(m => PartOf(m.Driver) == PartOf(ordered[^1].Driven));
            if (next is null)
                return null;
            left.Remove(next);
            ordered.Add(next);
        }

        return ordered.ToImmutable();
    }

    private static int? Teeth(Family family, string row)
    {
        var kind = family.Positions.FirstOrDefault(p => p.Id == PartOf(row))?.Kind;
        var sets = family.Kinds.FirstOrDefault(k => k.Id == kind)?.ToothSets ?? [];
        var feature = row.Length > PartOf(row).Length ? row[(PartOf(row).Length + 1)..] : string.Empty;
        return sets.FirstOrDefault(t => t.Id == feature)?.Teeth ?? (sets.Length == 1 ? sets[0].Teeth : null);
    }

    private static string PartOf(string row) => row.IndexOf('/', StringComparison.Ordinal) is var slash and >= 0 ? row[..slash] : row;

    private static ImmutableArray<string> UnderLoad(IEnumerable<MeshInPath> path) =>
        [.. path.SelectMany(m => new[] { PartOf(m.Driver), PartOf(m.Driven) }).Distinct(StringComparer.Ordinal)];
}
