namespace Kestermere6;

/// <summary>Which parts may run together. Every gear and sleeve is back-tapered, with a raised stop on the teeth; first and second brake on three cones.</summary>
internal static class Pairings
{
    private static readonly string[] s_bearings = ["input-bearing", "rear-bearing"];

    public static ImmutableArray<PairingRule> All => [.. FreeGear.All.SelectMany(Gear), .. Fourth, .. Hubs, .. Packs, .. Meshes, .. Small];

    public static ImmutableArray<MatchedSet> Sets =>
    [
        .. FreeGear.Pairs.Select(p => new MatchedSet("hub-and-sleeve-" + p, ["hub-" + p, "sleeve-" + p], SetBond.SameIndividualsAndIndex)),
        .. FreeGear.All.Where(g => g.Cones > 1).Select(g => new MatchedSet("cones-" + g.Name, [g.Ring, "middle-cone-" + g.Name, "inner-ring-" + g.Name], SetBond.SameIndividuals)),
    ];

    private static IEnumerable<PairingRule> Gear(FreeGear g) => Engaged(g.Name, g.Position, g.Sleeve, g.Hub, g.Keys, g.Ring);

    private static IEnumerable<PairingRule> Fourth => Engaged("fourth", "input-gear", "sleeve-3-4", "hub-3-4", "keys-3-4", "blocker-ring-fourth");

    private static IEnumerable<PairingRule> Engaged(string name, string gear, string sleeve, string hub, string keys, string ring) =>
    [
        CommonPairings.Engages($"{name}-engagement-form", $"Gear of {name} in its sleeve", gear, sleeve).Under(450, Millimetre(41.0m)),
        CommonPairings.Stops($"{name}-stop", $"What stops the sleeve in {name}", sleeve, gear + "/dog", Compatibility.Incompatible),
        CommonPairings.SameTeeth($"{name}-teeth", $"Gear of {name} and sleeve, engagement teeth", sleeve, gear + "/dog"),
        CommonPairings.OnCone($"{name}-ring-to-cone", $"Ring of {name} on its cone", ring, gear, Millimetre(0.50m), Millimetre(1.60m)),
        CommonPairings.OnKeys($"{name}-ring-to-keys", $"How far the ring of {name} turns on its keys", ring, keys, hub, 36, Millimetre(31.0m)),
        CommonPairings.InOil($"{name}-ring-oil", $"Lining of the ring of {name} against the oil", ring).Option("named", "marsh-75"),
        CommonPairings.AlikeTeeth($"{name}-ring-teeth", $"Teeth of the ring of {name}", ring, hub),
    ];

    private static IEnumerable<PairingRule> Hubs => FreeGear.Pairs.SelectMany(p => new[]
    {
        CommonPairings.Together("hub-and-sleeve-" + p, $"Hub and sleeve {p} stay together", "hub-" + p, "sleeve-" + p),
        CommonPairings.Pads($"fork-{p}-pads", $"Fork {p} in its groove", "fork-" + p, "sleeve-" + p),
        CommonPairings.AsMade("snap-ring-" + p, $"Snap ring of the hub {p} as made"),
    });

    private static IEnumerable<PairingRule> Packs => FreeGear.All.Where(g => g.Cones > 1).Select(g =>
        CommonPairings.Together("cones-" + g.Name, $"The three cones of {g.Name} stay together", g.Ring, "inner-ring-" + g.Name));

    private static IEnumerable<PairingRule> Meshes =>
    [
        .. GearTrain.Meshes.Select(m => CommonPairings.Mates(m.Id + "-pair", "Mates of the " + m.Id, m.Driver, m.Driven)),
        .. GearTrain.Meshes.Select(m => CommonPairings.Centres(m.Id + "-centres", "Centres of the " + m.Id, m.Driver, m.Driven, m.CentreDistance, Millimetre(-0.05m), Millimetre(0.08m))),
    ];

    private static IEnumerable<PairingRule> Small =>
    [
        .. s_bearings.Select(b => Pairing(b + "-thrust", $"The {b.Replace('-', ' ')} against thrust", "bearing-thrust")
            .Role("bearing", b).Role("gear", "third-gear").Option("thrust", "both")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "More balls, lower shoulders and a filling slot: it carries about a third of the thrust and pits on one side.")
            .MendedBy("deep-groove", "Fit the ordinary deep-groove type.", Fit(b, "type", "deep-groove"))),
        CommonPairings.Washer("first-washer", "Thrust washer behind first gear"),
        CommonPairings.Washer("sixth-washer", "Thrust washer behind sixth gear"),
        Pairing("ratio-set", "One ratio set throughout", "ratio-set")
            .Role("first", "input-gear").Role("second", "countergear").Role("third", "first-gear").Role("fourth", "second-gear")
            .Role("fifth", "third-gear").Role("sixth", "fifth-gear").Role("seventh", "sixth-gear")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "Mixed ratio sets: one gear has the wrong ratio, or its teeth run at the wrong centres."),
        CommonPairings.Washer("counter-washer-front", "Front thrust washer of the countergear", "output"),
        CommonPairings.Washer("counter-washer-rear", "Rear thrust washer of the countergear", "input"),
    ];
}
