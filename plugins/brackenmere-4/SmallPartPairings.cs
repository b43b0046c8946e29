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
        .. s_rings.Select(r => AsMade(r.Position, $"Snap ring {r.Of} as made")),
        AsMade("input-bearing-ring", "Locating ring of the input bearing as made"),
        .. s_rings.Select(r => Selected(r.Position, $"Snap ring {r.Of} chosen by thickness")),
        Washer("counter-washer-front", "Front thrust washer of the countergear", "output"),
        Washer("counter-washer-rear", "Rear thrust washer of the countergear", "input"),
        Washer("first-washer", "Thrust washer behind first gear", "input"),
    ];

    private static PairingRule AsMade(string ring, string name) => Pairing(ring + "-as-made", name, "snap-ring-to-groove")
        .Role("ring", ring)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "A ring ground to fit is soft, thin at one side and springs off. Look for the part that is too wide.")
        .MendedBy("ring-as-made", "Fit a ring of the series as it was made.", Fit(ring, "surface", "as-made"));

    private static PairingRule Selected(string ring, string name) => Pairing(ring + "-selected", name, "attributes-allowed")
        .Role("first", ring)
        .Option("attribute", "supply").Option("allowed", "first=selected").Option("conditional", "first=kit")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The rings of a small-parts kit are all one size, and one size can't set an end play. It may stay only if the reading on the assembly says so.");

    private static PairingRule Washer(string position, string name, string facing) => Pairing(position + "-material", name, "washer-material-facing")
        .Role("washer", position)
        .Option("materials", "bronze|steel-backed").Option("choice", "polymer").Option("facing", facing)
        .Broken(Compatibility.Incompatible, Severity.Wear, "The grooved face goes toward the gear, the tang in its slot. A new polymer washer against a sound old metal one is a choice to be recorded with its reason.");
}
