namespace Kestermere6;

/// <summary>The places, in stripping order.</summary>
internal static class Places
{
    public static ImmutableArray<Position> All => Stripped(Selector, Input, [.. FreeGear.Pairs.Reverse().SelectMany(p => Pair(p))], Shafts);

    private static ImmutableArray<Position> Selector => Assembly("selector",
    [
        Place("detents", "Detent balls and springs").Holds("detent", 3),
        Place("interlock-plunger", "Interlock plunger between the first two rails"),
        .. FreeGear.Pairs.Select(p => Place("rail-" + p, $"Rail {p}").Holds("shift-rail")),
        .. FreeGear.Pairs.Select(p => Place("fork-" + p, $"Fork {p}").Holds("shift-fork")),
        Place("fork-reverse", "Fork of the reverse idler").Holds("shift-fork"),
        Place("reverse-idler", "Reverse idler"),
        Place("idler-shaft", "Reverse idler shaft"),
    ]);

    private static ImmutableArray<Position> Input => Assembly("input",
        Place("input-bearing", "Input bearing"),
        Place("input-gear", "Input gear"),
        Place("pocket-needles", "Caged needles between input gear and mainshaft").Holds("needle-cage"),
        Place("blocker-ring-fourth", "Blocker ring of fourth").Holds("blocker-ring"));

    private static ImmutableArray<Position> Pair(string pair) => Assembly("mainshaft",
    [
        Place("snap-ring-" + pair, $"Snap ring of the hub {pair}"),
        Place("sleeve-" + pair, $"Sleeve {pair}"),
        Place("hub-" + pair, $"Hub {pair}"),
        Place("keys-" + pair, $"Keys of the hub {pair}").Holds("shift-key", 3),
        .. FreeGear.All.Where(g => g.Pair == pair).SelectMany(Gear),
    ]);

    private static IEnumerable<Position> Gear(FreeGear g) =>
    [
        .. g.Cones == 1 ? [Place(g.Ring, $"Blocker ring of {g.Name}").Holds("blocker-ring")] : Pack(g),
        Place(g.Position, $"Gear of {g.Name}"),
        Place("needles-" + g.Name, $"Caged needles of {g.Name}").Holds("needle-cage"),
    ];

    private static Position[] Pack(FreeGear g) =>
    [
        Place(g.Ring, $"Outer ring of {g.Name}").Holds("outer-ring"),
        Place("middle-cone-" + g.Name, $"Middle cone of {g.Name}").Holds("middle-cone"),
        Place("inner-ring-" + g.Name, $"Inner ring of {g.Name}").Holds("inner-ring"),
    ];

    private static ImmutableArray<Position> Shafts => Assembly("shafts",
        Place("first-washer", "Thrust washer behind first gear"),
        Place("sixth-washer", "Thrust washer behind sixth gear"),
        Place("rear-bearing", "Rear bearing"),
        Place("mainshaft", "Mainshaft"),
        Place("countergear", "Countergear"),
        Place("counter-washer-front", "Front thrust washer of the countergear").Holds("counter-washer").Limit("thickness", Mm(2.48m, 2.52m), Mm(2.40m, 2.55m)),
        Place("counter-washer-rear", "Rear thrust washer of the countergear, selective").Holds("counter-washer"),
        Place("case", "Case"),
        Place("oil", "Oil to be filled"));
}
