namespace Brackenmere4;

/// <summary>Snap rings and thrust washers.</summary>
internal static class SmallPartPairings
{
    private static readonly (string Position, string Of)[] s_rings =
    [
        ("snap-ring-3-4", "before the third and fourth hub"), ("snap-ring-1-2", "behind the first and second hub"), ("snap-ring-rear", "behind the rear bearing"),
    ];

    public static IEnumerable<PairingRule> All =>
    [
        .. s_rings.Select(r => CommonPairings.AsMade(r.Position, $"Snap ring {r.Of} as made")),
        CommonPairings.AsMade("input-bearing-ring", "Locating ring of the input bearing as made"),
        .. s_rings.Select(r => Selected(r.Position, $"Snap ring {r.Of} chosen by thickness")),
        CommonPairings.Washer("counter-washer-front", "Front thrust washer of the countergear", "output"),
        CommonPairings.Washer("counter-washer-rear", "Rear thrust washer of the countergear", "input"),
        CommonPairings.Washer("first-washer", "Thrust washer behind first gear", "input"),
    ];

    private static PairingRule Selected(string ring, string name) => Pairing(ring + "-selected", name, "attributes-allowed")
        .Role("first", ring)
        .Option("attribute", "supply").Option("allowed", "first=selected").Option("conditional", "first=kit")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The rings of a small-parts kit are all one size, and one size can't set an end play. It may stay only if the reading on the assembly says so.");
}
