namespace Brackenmere4;

/// <summary>Hub and sleeve, rings on their cones, keys in their slots, forks in their grooves.</summary>
internal static class SynchronizerPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        CommonPairings.Together("hub-and-sleeve-3-4", "Third and fourth hub and sleeve stay together", "hub-3-4", "sleeve-3-4"),
        CommonPairings.Together("hub-and-sleeve-1-2", "First and second hub and sleeve stay together", "hub-1-2", "sleeve-1-2"),
        .. Ring("first", "blocker-ring-1", "first-gear", "keys-1-2", "hub-1-2"),
        .. Ring("second", "blocker-ring-2", "second-gear", "keys-1-2", "hub-1-2"),
        .. Ring("third", "blocker-ring-3", "third-gear", "keys-3-4", "hub-3-4"),
        .. Ring("fourth", "blocker-ring-4", "input-gear", "keys-3-4", "hub-3-4"),
        Keys("key-length-3-4", "Keys of the third and fourth hub", "keys-3-4", "hub-3-4", "one", Inch(0.7400m), Inch(0.7490m)),
        Keys("key-length-1-2", "Keys of the first and second hub", "keys-1-2", "hub-1-2", "none", Inch(0.9050m), Inch(0.9150m)),
        KeyRoom("key-room-3-4", "End room of the keys in the third and fourth hub", "hub-3-4", "keys-3-4"),
        KeyRoom("key-room-1-2", "End room of the keys in the first and second hub", "hub-1-2", "keys-1-2"),
        CommonPairings.Pads("fork-3-4-pads", "Third and fourth fork in its groove", "fork-3-4", "sleeve-3-4"),
        CommonPairings.Pads("fork-1-2-pads", "First and second fork in its groove", "fork-1-2", "sleeve-1-2"),
        CommonPairings.Pads("fork-reverse-pads", "Reverse fork in its groove", "fork-reverse", "reverse-idler"),
    ];

    private static IEnumerable<PairingRule> Ring(string of, string ring, string gear, string keys, string hub) =>
    [
        CommonPairings.OnCone($"{of}-ring-to-cone", $"Blocker ring of {of} on its cone", ring, gear, Inch(0.0200m), Inch(0.0750m)),
        CommonPairings.OnKeys($"{of}-ring-to-keys", $"How far the blocker ring of {of} turns on its keys", ring, keys, hub, 36, Inch(1.2500m)),
        CommonPairings.InOil($"{of}-ring-oil", $"Lining of the blocker ring of {of} against the oil", ring),
        CommonPairings.AlikeTeeth($"{of}-ring-teeth", $"Teeth of the blocker ring of {of}", ring, hub),
    ];

    private static PairingRule Keys(string id, string name, string keys, string hub, string notch, Length low, Length high) => Pairing(id, name, "key-length-to-hub")
        .Role("key", keys).Role("hub", hub)
        .Parameter("length-low", low).Parameter("length-high", high)
        .Option("notch", notch)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The keys of the other hub: the longer ones foul, the shorter ones do not press the ring. It shifts badly.")
        .MendedBy("right-keys", "Fit the keys of this hub: the longer ones belong to first and second.",
            Fit(keys, "notch", notch), FitWithin(keys, "length", Limits.Between(low, high, Demo)));

    private static PairingRule KeyRoom(string id, string name, string hub, string keys) => Pairing(id, name, "characteristics-difference")
        .Role("first", hub).Role("second", keys)
        .Option("first.characteristic", "slot-length").Option("second.characteristic", "length")
        .Parameter("low", Inch(0.0050m)).Parameter("high", Inch(0.0300m))
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "Too long and the key jams in its slot; too short and it drops out of its detent.");
}
