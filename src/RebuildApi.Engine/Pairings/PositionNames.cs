using System.Globalization;
using RebuildApi.Engine.Snapshots;

namespace RebuildApi.Engine.Pairings;

/// <summary>What a person calls a position inside a sentence: <c>third gear</c>, not <c>third-gear</c>.</summary>
internal static class PositionNames
{
    public static string Called(this FamilyIndex family, string position)
    {
        var name = family.Positions.TryGetValue(position, out var known) ? known.Name.In("en") : position;
        return name.Length == 0 ? position : char.ToLower(name[0], CultureInfo.InvariantCulture) + name[1..];
    }

    /// <summary>What a person calls the position in a role.</summary>
    public static string Called(this PairingCase parts, string role) => parts.Family.Called(parts.Places[role].Position);

    /// <summary>A list as it is spoken: <c>a, b and c</c>.</summary>
    public static string And(IEnumerable<string> names)
    {
        var all = names.ToArray();
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }
}
