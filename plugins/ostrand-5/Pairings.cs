namespace Ostrand5;

/// <summary>Which parts may run together. Every gear and sleeve is back-tapered; the sleeve is stopped on the teeth.</summary>
internal static class Pairings
{
    private static readonly (string Name, string Gear, string Sleeve, string Hub, string Keys, string Ring)[] s_gears =
    [
        ("first", "first-gear", "sleeve-1-2", "hub-1-2", "keys-1-2", "blocker-ring-1"),
        ("second", "second-gear", "sleeve-1-2", "hub-1-2", "keys-1-2", "blocker-ring-2"),
        ("third", "third-gear", "sleeve-3-4", "hub-3-4", "keys-3-4", "blocker-ring-3"),
        ("fourth", "fourth-gear", "sleeve-3-4", "hub-3-4", "keys-3-4", "blocker-ring-4"),
        ("fifth", "fifth-gear", "sleeve-5", "hub-5", "keys-5", "blocker-ring-5"),
    ];

    private static readonly string[] s_bearings = ["input-bearing-front", "input-bearing-rear", "output-bearing-front", "output-bearing-rear"];

    public static ImmutableArray<PairingRule> All => [.. s_gears.SelectMany(Gear), .. Hubs, .. Meshes, .. Bearings, .. SmallParts];

    public static ImmutableArray<MatchedSet> Sets =>
    [
        new("hub-and-sleeve-1-2", ["hub-1-2", "sleeve-1-2"], SetBond.SameIndividualsAndIndex),
        new("hub-and-sleeve-3-4", ["hub-3-4", "sleeve-3-4"], SetBond.SameIndividualsAndIndex),
        new("hub-and-sleeve-5", ["hub-5", "sleeve-5"], SetBond.SameIndividualsAndIndex),
        new("input-bearings", ["input-bearing-front", "input-bearing-rear"], SetBond.ReplaceTogether),
        new("output-bearings", ["output-bearing-front", "output-bearing-rear"], SetBond.ReplaceTogether),
    ];

    private static IEnumerable<PairingRule> Gear((string Name, string Gear, string Sleeve, string Hub, string Keys, string Ring) g) =>
    [
        CommonPairings.Engages($"{g.Name}-engagement-form", $"Gear of {g.Name} in its sleeve", g.Gear, g.Sleeve).Under(260, Millimetre(38.0m)),
        CommonPairings.Stops($"{g.Name}-stop", $"What stops the sleeve in {g.Name}", g.Sleeve, g.Gear + "/dog", Compatibility.Incompatible),
        CommonPairings.SameTeeth($"{g.Name}-teeth", $"Gear of {g.Name} and sleeve, engagement teeth", g.Sleeve, g.Gear + "/dog"),
        CommonPairings.OnCone($"{g.Name}-ring-to-cone", $"Blocker ring of {g.Name} on its cone", g.Ring, g.Gear, Millimetre(0.55m), Millimetre(1.60m)),
        CommonPairings.OnKeys($"{g.Name}-ring-to-keys", $"How far the blocker ring of {g.Name} turns on its keys", g.Ring, g.Keys, g.Hub, 36, Millimetre(31.0m)),
        CommonPairings.InOil($"{g.Name}-ring-oil", $"Lining of the blocker ring of {g.Name} against the oil", g.Ring).Option("named", "marsh-75"),
        CommonPairings.AlikeTeeth($"{g.Name}-ring-teeth", $"Teeth of the blocker ring of {g.Name}", g.Ring, g.Hub),
    ];

    private static PairingRule[] Hubs =>
    [
        CommonPairings.Together("hub-and-sleeve-1-2", "First and second hub and sleeve stay together", "hub-1-2", "sleeve-1-2"),
        CommonPairings.Together("hub-and-sleeve-3-4", "Third and fourth hub and sleeve stay together", "hub-3-4", "sleeve-3-4"),
        CommonPairings.Together("hub-and-sleeve-5", "Fifth hub and sleeve stay together", "hub-5", "sleeve-5"),
        CommonPairings.Pads("fork-1-2-pads", "First and second fork in its groove", "fork-1-2", "sleeve-1-2"),
        CommonPairings.Pads("fork-3-4-pads", "Third and fourth fork in its groove", "fork-3-4", "sleeve-3-4"),
        CommonPairings.Pads("fork-5-pads", "Fifth fork in its groove", "fork-5", "sleeve-5"),
    ];

    private static PairingRule[] Meshes =>
    [
        .. GearTrain.Meshes.Select(m => CommonPairings.Mates(m.Id + "-pair", "Mates of the " + m.Id, m.Driver, m.Driven)),
        .. GearTrain.Meshes.Select(m => CommonPairings.Centres(m.Id + "-centres", "Centres of the " + m.Id, m.Driver, m.Driven, m.CentreDistance, Millimetre(-0.05m), Millimetre(0.08m))),
        Pairing("ratio-set", "One ratio set throughout", "ratio-set")
            .Role("first", "input-shaft").Role("second", "output-shaft").Role("third", "first-gear").Role("fourth", "second-gear")
            .Role("fifth", "third-gear").Role("sixth", "fourth-gear").Role("seventh", "fifth-gear")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "Mixed ratio sets: one gear has the wrong ratio, or its teeth run at the wrong centres."),
    ];

    private static PairingRule[] Bearings =>
    [
        Thrust("input-front-thrust", "Front bearing of the input shaft against thrust", "input-bearing-front", "input-bearing-rear", "third-gear"),
        Thrust("output-front-thrust", "Front bearing of the output shaft against thrust", "output-bearing-front", "output-bearing-rear", "first-gear"),
        CommonPairings.Together("input-bearings", "Bearings of the input shaft are exchanged together", "input-bearing-front", "input-bearing-rear"),
        CommonPairings.Together("output-bearings", "Bearings of the output shaft are exchanged together", "output-bearing-front", "output-bearing-rear"),
        .. s_bearings.Select(CupAndCone),
    ];

    private static PairingRule[] SmallParts =>
    [
        CommonPairings.AsMade("snap-ring-1-2", "Snap ring of the first and second hub as made"),
        CommonPairings.AsMade("snap-ring-3-4", "Snap ring of the third and fourth hub as made"),
        CommonPairings.AsMade("snap-ring-5", "Snap ring of the fifth hub as made"),
        CommonPairings.Washer("first-washer", "Thrust washer behind first gear"),
        CommonPairings.Washer("fourth-washer", "Thrust washer behind fourth gear"),
    ];

    private static PairingRule Thrust(string id, string name, string bearing, string mate, string gear) => Pairing(id, name, "bearing-thrust")
        .Role("bearing", bearing).Role("mate", mate).Role("gear", gear)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "A tapered bearing takes one direction and needs its mate; a cylindrical one takes none.")
        .MendedBy("tapered-pair", "Fit tapered bearings at both ends.", Fit(bearing, "type", "tapered"), Fit(mate, "type", "tapered"));

    private static PairingRule CupAndCone(string position) => Pairing(position + "-as-pair", $"Cup and cone of {position}", "attributes-allowed")
        .Role("first", position)
        .Option("attribute", "supplied").Option("allowed", "first=as-set")
        .Broken(Compatibility.Incompatible, Severity.Wear, "A cup and a cone that have not run together spall early: always as a pair.");
}
