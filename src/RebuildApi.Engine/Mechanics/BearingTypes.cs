using System.Collections.Immutable;

namespace RebuildApi.Engine.Mechanics;

/// <summary>How a type of bearing takes thrust.</summary>
/// <param name="Id">As the attribute <c>type</c> says it: <c>deep-groove</c>.</param>
/// <param name="Directions">In how many directions it takes thrust: 0, 1 or 2.</param>
/// <param name="ThrustShare">Thrust that it takes, as a share of a deep-groove bearing of the same size; none when it is not known as one number.</param>
/// <param name="RadialShareLow">Radial capacity as a share of the deep-groove type, from.</param>
/// <param name="RadialShareHigh">The same, to.</param>
public sealed record BearingType(string Id, int Directions, double? ThrustShare, double RadialShareLow, double RadialShareHigh);

/// <summary>
/// Types of bearing against thrust. The filling-slot figures (20 to 40 % more radial capacity, about one third of the thrust) are those of an
/// engineering magazine's reference article on radial ball bearings.
/// </summary>
public static class BearingTypes
{
    // Pure thrust on a deep-groove bearing: at most half its static rating (bearing catalogues; from memory).
    private const double DeepGrooveShareOfStaticRating = 0.5;

    /// <summary>The types.</summary>
    public static ImmutableArray<BearingType> All { get; } =
    [
        new("deep-groove", 2, 1, 1, 1),
        new("filling-slot", 2, 1.0 / 3, 1.2, 1.4),
        new("angular-contact", 1, null, 1, 1),
        new("tapered", 1, null, 1, 1),
        new("cylindrical", 0, 0, 1, 1),
        new("needle", 0, 0, 1, 1),
    ];

    /// <summary>A type, or null when it is not listed.</summary>
    public static BearingType? Find(string id) => All.FirstOrDefault(t => t.Id == id);

    /// <summary>Thrust that a bearing of a type takes for long, N; null where it depends on the contact angle or the mate.</summary>
    /// <param name="type">The type.</param>
    /// <param name="staticRating">C0 of a deep-groove bearing of its size, N.</param>
    public static double? ThrustCapacity(BearingType type, double staticRating) => type.ThrustShare * DeepGrooveShareOfStaticRating * staticRating;
}
