using System.Text.Json.Serialization;

namespace RebuildApi.Contracts;

/// <summary>One row of running gear teeth on a part.</summary>
/// <param name="Id">Unique within its kind: <c>third</c>; empty when the part has only one.</param>
/// <param name="Teeth">Number of teeth.</param>
/// <param name="NormalModule">Module in the normal section.</param>
/// <param name="HelixAngle">Helix angle at the reference cylinder, radians; 0 for spur.</param>
/// <param name="Hand">Hand of the helix.</param>
/// <param name="NormalPressureAngle">Pressure angle in the normal section, radians.</param>
/// <param name="ProfileShift">Profile shift coefficient x.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record ToothSet(
    string Id,
    int Teeth,
    Length NormalModule,
    double HelixAngle,
    Hand Hand,
    double NormalPressureAngle,
    double ProfileShift,
    Source Source);

/// <summary>Hand of a helix.</summary>
[JsonConverter(typeof(KebabCaseEnumConverter<Hand>))]
public enum Hand
{
    /// <summary>Straight teeth.</summary>
    Spur,

    /// <summary>Right hand.</summary>
    Right,

    /// <summary>Left hand.</summary>
    Left,
}
