namespace Brackenmere4;

/// <summary>Running fits, bearing seats, keys, rings, rails and the interlock. A negative gap is a tight fit.</summary>
internal static class Fits
{
    public static ImmutableArray<ClearanceLoop> All => [.. Rollers, .. Journals, .. Seats, .. Synchronizers, .. Forks, .. Rails];

    private static ClearanceLoop[] Rollers =>
    [
        Clearance("pocket-clearance", "Pocket rollers, radial clearance on diameter", "input", In(0.0005m, 0.0030m))
            .Opens("input-gear/pocket-bore").Closes("mainshaft/nose").Counts(-2, 1, "pocket-rollers/diameter")
            .Else("The rollers bind.", "The shafts tip on each other: noise, and gears that walk out."),
        Needles("counter-needle-clearance-front", "Front needles of the countergear, radial clearance on diameter", "counter-needles-front"),
        Needles("counter-needle-clearance-rear", "Rear needles of the countergear, radial clearance on diameter", "counter-needles-rear"),
    ];

    private static ClearanceLoop[] Journals =>
    [
        Journal("third-radial-play", "Third gear on its journal", "third-gear/bore", "mainshaft/third-journal"),
        Journal("second-radial-play", "Second gear on its journal", "second-gear/bore", "mainshaft/second-journal"),
        Journal("first-radial-play", "First gear on its journal", "first-gear/bore", "mainshaft/first-journal"),
        Clearance("idler-clearance", "Reverse idler on its shaft", "countershaft", In(0.0015m, 0.0055m))
            .Opens("reverse-idler/bore").Closes("idler-shaft/diameter").Ordinary()
            .Else("The idler seizes on its shaft.", "Reverse is noisy."),
    ];

    private static ClearanceLoop[] Seats =>
    [
        Clearance("input-bearing-in-case", "Input bearing in the case", "input", In(0m, 0.0030m))
            .Opens("case/input-bore").Closes("input-bearing/outside-diameter")
            .Else("The outer ring is squeezed.", "The outer ring creeps and wears the case."),
        Clearance("rear-bearing-in-case", "Rear bearing in the case", "mainshaft", In(0m, 0.0030m))
            .Opens("case/rear-bore").Closes("rear-bearing/outside-diameter")
            .Else("The outer ring is squeezed.", "The outer ring creeps and wears the case."),
        Clearance("input-bearing-on-gear", "Input bearing on its seat", "input", In(-0.0012m, -0.0001m))
            .Opens("input-bearing/bore").Closes("input-gear/bearing-seat")
            .Else("The inner ring is stretched and loses its clearance.", "The inner ring creeps on its seat."),
        Clearance("rear-bearing-on-shaft", "Rear bearing on its seat", "mainshaft", In(-0.0012m, -0.0001m))
            .Opens("rear-bearing/bore").Closes("mainshaft/rear-bearing-seat")
            .Else("The inner ring is stretched and loses its clearance.", "The inner ring creeps on its seat."),
    ];

    private static ClearanceLoop[] Synchronizers =>
    [
        KeyPlay("key-play-3-4", "Keys in the third and fourth hub", "hub-3-4/slot-width", "keys-3-4/width"),
        KeyPlay("key-play-1-2", "Keys in the first and second hub", "hub-1-2/slot-width", "keys-1-2/width"),
    ];

    private static ClearanceLoop[] Forks =>
    [
        Pad("fork-3-4-play-left", "Third and fourth fork, left pad in the groove", "sleeve-3-4", "fork-3-4/pad-left"),
        Pad("fork-3-4-play-right", "Third and fourth fork, right pad in the groove", "sleeve-3-4", "fork-3-4/pad-right"),
        Pad("fork-1-2-play-left", "First and second fork, left pad in the groove", "sleeve-1-2", "fork-1-2/pad-left"),
        Pad("fork-1-2-play-right", "First and second fork, right pad in the groove", "sleeve-1-2", "fork-1-2/pad-right"),
        Pad("fork-reverse-play-left", "Reverse fork, left pad in the groove", "reverse-idler", "fork-reverse/pad-left"),
        Pad("fork-reverse-play-right", "Reverse fork, right pad in the groove", "reverse-idler", "fork-reverse/pad-right"),
    ];

    private static ClearanceLoop[] Rails =>
    [
        Rail("rail-3-4-play", "Third and fourth rail in its bore", "rail-3-4"),
        Rail("rail-1-2-play", "First and second rail in its bore", "rail-1-2"),
        Clearance("interlock-hold", "How far the interlock plunger still holds the second rail", "selector", In(0.040m, 0.090m))
            .Opens("interlock-plunger/length").Closes("shift-cover/rail-spacing").Counts(1, 2, "rail-3-4/diameter", "rail-1-2/diameter")
            .SafetyCritical()
            .Else("Two gears can go in at once and the wheels lock.", "The plunger is too long and no gear goes in."),
        Clearance("interlock-freedom", "Room for the interlock plunger when one rail moves", "selector", In(0.004m, 0.035m))
            .Opens("shift-cover/rail-spacing", "rail-3-4/interlock-notch").Counts(-1, 2, "rail-3-4/diameter", "rail-1-2/diameter").Closes("interlock-plunger/length")
            .SafetyCritical()
            .Else("No gear goes in.", "The plunger does not hold the other rail and two gears can go in at once."),
    ];

    private static ClearanceLoop Needles(string id, string name, string needles) => Clearance(id, name, "countershaft", In(0.0005m, 0.0030m))
        .Opens("countergear/bore").Closes("countershaft/diameter").Counts(-2, 1, $"{needles}/diameter")
        .Else("The needles bind.", "The countergear tips and its teeth run on their ends.");

    private static ClearanceLoop Journal(string id, string name, string bore, string journal) => Clearance(id, name, "mainshaft", In(0.0015m, 0.0045m))
        .Opens(bore).Closes(journal)
        .Else("The gear seizes on its journal.", "The gear rocks and walks the sleeve out.");

    private static ClearanceLoop KeyPlay(string id, string name, string slot, string key) => Clearance(id, name, "mainshaft", In(0.001m, 0.009m))
        .Opens(slot).Closes(key)
        .Else("The key sticks.", "The blocker ring turns too far and blocks the shift.");

    private static ClearanceLoop Pad(string id, string name, string groove, string pad) => Clearance(id, name, "selector", In(0.007m, 0.030m))
        .Opens($"{groove}/groove-width").Closes(pad).Ordinary()
        .Else("The pad drags in the groove and burns.", "Lever travel is lost and the gear is not fully in.");

    private static ClearanceLoop Rail(string id, string name, string rail) => Clearance(id, name, "selector", In(0.0008m, 0.0070m))
        .Opens("shift-cover/rail-bore").Closes($"{rail}/diameter").Ordinary()
        .Else("The rail sticks.", "The rail tips and travel is lost.");
}
