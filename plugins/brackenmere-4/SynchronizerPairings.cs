namespace Brackenmere4;

/// <summary>Hub and sleeve, rings on their cones, keys in their slots, forks in their grooves.</summary>
internal static class SynchronizerPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        Together("hub-and-sleeve-3-4", "Third and fourth hub and sleeve stay together", "hub-3-4", "sleeve-3-4"),
        Together("hub-and-sleeve-1-2", "First and second hub and sleeve stay together", "hub-1-2", "sleeve-1-2"),
        .. Ring("first", "blocker-ring-1", "first-gear", "keys-1-2", "hub-1-2"),
        .. Ring("second", "blocker-ring-2", "second-gear", "keys-1-2", "hub-1-2"),
        .. Ring("third", "blocker-ring-3", "third-gear", "keys-3-4", "hub-3-4"),
        .. Ring("fourth", "blocker-ring-4", "input-gear", "keys-3-4", "hub-3-4"),
        Keys("key-length-3-4", "Keys of the third and fourth hub", "keys-3-4", "hub-3-4", "one", Inch(0.7400m), Inch(0.7490m)),
        Keys("key-length-1-2", "Keys of the first and second hub", "keys-1-2", "hub-1-2", "none", Inch(0.9050m), Inch(0.9150m)),
        KeyRoom("key-room-3-4", "End room of the keys in the third and fourth hub", "hub-3-4", "keys-3-4"),
        KeyRoom("key-room-1-2", "End room of the keys in the first and second hub", "hub-1-2", "keys-1-2"),
        Pads("fork-3-4-pads", "Third and fourth fork in its groove", "fork-3-4", "sleeve-3-4"),
        Pads("fork-1-2-pads", "First and second fork in its groove", "fork-1-2", "sleeve-1-2"),
        Pads("fork-reverse-pads", "Reverse fork in its groove", "fork-reverse", "reverse-idler"),
    ];

    private static PairingRule Together(string id, string name, string hub, string sleeve) => Pairing(id, name, "matched-set")
        .Role("first", hub).Role("second", sleeve)
        .Option("set", id)
        .Broken(Compatibility.Incompatible, Severity.Wear, "Worn to each other and split, or turned on each other: the sleeve rocks or binds, and walks out.")
        .EasedBy("as-set", "Replace hub and sleeve as a set.");

    private static IEnumerable<PairingRule> Ring(string gearName, string ring, string gear, string keys, string hub) =>
    [
        Pairing($"{gearName}-ring-to-cone", $"Blocker ring of {gearName} on its cone", "ring-to-cone")
            .Role("ring", ring).Role("gear", gear)
            .Parameter("gap-low", Inch(0.0200m)).Parameter("gap-high", Inch(0.0750m))
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "It does not brake the gear: it clashes, however generous the gap looks.")
            .EasedBy("ring-that-grips", "Fit a ring that grips at once when pressed on by hand; it sits lower.", Fit(ring, "grip", "grips")),
        Pairing($"{gearName}-ring-to-keys", $"How far the blocker ring of {gearName} turns on its keys", "ring-slot-to-key")
            .Role("ring", ring).Role("key", keys).Role("hub", hub)
            .Parameter("teeth", new Real(36, Dimension.Count)).Parameter("key-radius", Inch(1.2500m))
            .Parameter("share-low", new Real(0.20, Dimension.Ratio)).Parameter("share-high", new Real(0.33, Dimension.Ratio))
            .Parameter("share-watch", new Real(0.40, Dimension.Ratio))
            .Option("hub-play", "counted")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "The ring indexes too far, tooth meets tooth and the shift is blocked; or not far enough, and it clashes.")
            .EasedBy("sharp-hub", "Fit a hub with sharp key slots, with its sleeve.", Fit(hub, "key-slot", "sharp")),
        Pairing($"{gearName}-ring-oil", $"Lining of the blocker ring of {gearName} against the oil", "lining-against-oil")
            .Role("ring", ring).Role("oil", "oil")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "Yellow metal corrodes hot in sulfur-phosphorus oil; friction modifiers make any ring slip.")
            .MendedBy("mild-oil", "Fill an oil with mild additives that the maker names for yellow metal.", Fit("oil", "additive", "mild")),
        Pairing($"{gearName}-ring-teeth", $"Teeth of the blocker ring of {gearName}", "attributes-equal")
            .Role("first", ring).Role("second", hub)
            .Option("attribute", "teeth")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "The sleeve can't pass the ring."),
    ];

    private static PairingRule Keys(string id, string name, string keys, string hub, string notch, Length low, Length high) => Pairing(id, name, "key-length-to-hub")
        .Role("key", keys).Role("hub", hub)
        .Parameter("length-low", low).Parameter("length-high", high)
        .Option("notch", notch)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The keys of the other hub: the longer ones foul, the shorter ones do not press the ring. It shifts badly.")
        .EasedBy("right-keys", "Fit the keys of this hub: the longer ones belong to first and second.",
            Fit(keys, "notch", notch), FitWithin(keys, "length", Limits.Between(low, high, Demo)));

    private static PairingRule KeyRoom(string id, string name, string hub, string keys) => Pairing(id, name, "characteristics-difference")
        .Role("first", hub).Role("second", keys)
        .Option("first.characteristic", "slot-length").Option("second.characteristic", "length")
        .Parameter("low", Inch(0.0050m)).Parameter("high", Inch(0.0300m))
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "Too long and the key jams in its slot; too short and it drops out of its detent.");

    private static PairingRule Pads(string id, string name, string fork, string sleeve) => Pairing(id, name, "fork-to-groove")
        .Role("fork", fork).Role("sleeve", sleeve)
        .Broken(Compatibility.Incompatible, Severity.Wear, "One pad worn and the other fresh: the sleeve has been pulling past its place, or the fork is bent. A new fork alone wears the same way.")
        .EasedBy("find-the-pull", "Find what pulled: a back-tapered sleeve without a stop, travel set too long, a bent fork. Then fit a sound fork.",
            Fit(fork, "input-pad", "light"), Fit(fork, "output-pad", "light"));
}
