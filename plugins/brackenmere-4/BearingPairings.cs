namespace Brackenmere4;

/// <summary>Bearings against the thrust of helical gears, and their clearance groups.</summary>
internal static class BearingPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        Thrust("input-bearing-thrust", "Input bearing against thrust", "input-bearing", "input-gear"),
        Thrust("rear-bearing-thrust", "Rear bearing against thrust", "rear-bearing", "third-gear"),
        Group("input-bearing-group", "Clearance group of the input bearing", "input-bearing"),
        Group("rear-bearing-group", "Clearance group of the rear bearing", "rear-bearing"),
    ];

    private static PairingRule Thrust(string id, string name, string bearing, string gear) => Pairing(id, name, "bearing-thrust")
        .Role("bearing", bearing).Role("gear", gear)
        .Option("thrust", "both")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "More balls, lower shoulders and a filling slot: it carries about a third of the thrust and pits on one side.")
        .MendedBy("deep-groove", "Fit the ordinary deep-groove type.", Fit(bearing, "type", "deep-groove"));

    private static PairingRule Group(string id, string name, string bearing) => Pairing(id, name, "bearing-envelope")
        .Role("bearing", bearing)
        .Option("clearance-group", "cn|c3")
        .Broken(Compatibility.Incompatible, Severity.Wear, "Pressed on its seat it has no clearance left and runs hot.")
        .MendedBy("normal-group", "Fit one of the normal group or C3.", Fit(bearing, "clearance-group", "cn"));
}
