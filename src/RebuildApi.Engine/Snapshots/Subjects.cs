using System.Globalization;
using RebuildApi.Contracts;

namespace RebuildApi.Engine.Snapshots;

/// <summary>How answers name what they are about.</summary>
public static class Subjects
{
    /// <summary>A part where it sits: <c>third-gear</c>; the second of several is <c>keys-3-4#2</c>.</summary>
    public static string Of(Placement placement) => Of(placement.Position, placement.Index);

    /// <summary>A place: <c>third-gear</c>; the second of several is <c>keys-3-4#2</c>.</summary>
    public static string Of(string position, int index) =>
        index == 1 ? position : position + "#" + index.ToString(CultureInfo.InvariantCulture);
}
