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
}
