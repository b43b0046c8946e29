namespace Kestermere6;

/// <summary>End plays, depths of engagement, the room before the travel stop, and running fits.</summary>
internal static class Clearances
{
    public static ImmutableArray<ClearanceLoop> All => [.. EndPlays, .. Depths, .. StopRooms, .. Fits];

    public static ImmutableArray<Series> Series =>
    [
        .. FreeGear.Pairs.Select(p => MmSeries("snap-ring-" + p, "snap-ring-" + p, 0.010m, 1.70m, 1.75m, 1.80m, 1.85m, 1.90m)),
        MmSeries("first-washer", "first-washer", 0.010m, 3.90m, 3.95m, 4.00m, 4.05m, 4.10m),
        MmSeries("sixth-washer", "sixth-washer", 0.010m, 3.90m, 3.95m, 4.00m, 4.05m, 4.10m),
        MmSeries("counter-washer", "counter-washer", 0.010m, 2.40m, 2.45m, 2.50m, 2.55m, 2.60m),
    ];

    private static ClearanceLoop[] EndPlays =>
    [
        AtRing("third", "third-seat", "3-4"),
        AtRing("second", "second-seat", "1-2"),
        AtRing("fifth", "fifth-seat", "5-6"),
        AtWasher("first", "first-seat", "second-seat", "1-2"),
        AtWasher("sixth", "sixth-seat", "fifth-seat", "5-6"),
        Clearance("counter-end-play", "Countergear end play", "countershaft", Mm(0.10m, 0.30m, 0.20m))
            .Opens("case/counter-span").Closes("countergear/length", "counter-washer-front/thickness").ClosesWith("counter-washer", "counter-washer-rear")
            .ReadFitted().BetweenCelsius(-30, 90, Mm(0.00m, 0.25m), Mm(0.20m, 0.55m))
            .Else("Tight, the washers burn.", "Loose, the countergear growls and its mates wear."),
    ];

    private static ClearanceLoop[] Depths =>
    [
        DepthAtRing("third", "third-seat", "3-4"), DepthAtRing("second", "second-seat", "1-2"), DepthAtRing("fifth", "fifth-seat", "5-6"),
        DepthAtWasher("first", "first-seat", "second-seat", "1-2"), DepthAtWasher("sixth", "sixth-seat", "fifth-seat", "5-6"), DepthOfFourth,
    ];

    /// <summary>The stop on the teeth less the depth that the rail gives: what the sleeve may still be drawn in.</summary>
    private static IEnumerable<ClearanceLoop> StopRooms => Depths.Select(d => d with
    {
        Id = StopRoom(d),
        Name = Text.English($"clearance.{StopRoom(d)}", "Room before the travel stop, " + d.Name.In("en").ToLowerInvariant()),
        Window = Mm(0.30m, 1.60m),
        Terms = [.. d.Terms.Select(t => t with { Numerator = -t.Numerator }), new Term(new OfPart(new Address(d.Id == "fourth-engagement" ? "input-gear" : d.Id.Split('-')[0] + "-gear", "stop-depth")), 1)],
        WhenBelow = Text.English($"clearance.{StopRoom(d)}.below", "The sleeve stands on its stop before the rail is in its notch: the detent does not hold."),
        WhenAbove = Text.English($"clearance.{StopRoom(d)}.above", "The sleeve is drawn in past the rail and the fork takes the thrust."),
    });

    private static string StopRoom(ClearanceLoop depth) => depth.Id.Replace("-engagement", "-stop-room", StringComparison.Ordinal);

    private static IEnumerable<ClearanceLoop> Fits =>
    [
        Clearance("idler-clearance", "Reverse idler on its shaft", "selector", Mm(0.016m, 0.100m))
            .Opens("reverse-idler/bore").Closes("idler-shaft/diameter")
            .Else("The idler binds on its shaft.", "The idler tips, its teeth carry on their ends, and reverse jumps out."),
        Clearance("fork-reverse-play", "Fork of reverse in the groove of the idler", "selector", Mm(0.30m, 0.90m))
            .Opens("reverse-idler/groove-width").Closes("fork-reverse/pad-thickness").Ordinary()
            .Else("The pad drags in the groove and burns.", "Lever travel is lost and the idler is not fully in."),
        .. FreeGear.All.Select(g => Clearance(g.Name + "-radial-play", $"Gear of {g.Name} on its needles", "mainshaft", Mm(0.008m, 0.060m))
            .Opens(g.Position + "/bore").Closes("mainshaft/journal").Counts(-2, 1, $"needles-{g.Name}/diameter")
            .Else("The needles bind.", "The gear rocks and walks the sleeve out.")),
        Clearance("pocket-clearance", "Pocket needles, radial clearance on diameter", "input", Mm(0.008m, 0.060m))
            .Opens("input-gear/pocket-bore").Closes("mainshaft/nose").Counts(-2, 1, "pocket-needles/diameter")
            .Else("The needles bind.", "The shafts tip on each other."),
        .. FreeGear.Pairs.Select(p => Clearance($"fork-{p}-play", $"Fork {p} in its groove", "selector", Mm(0.30m, 0.90m))
            .Opens($"sleeve-{p}/groove-width").Closes($"fork-{p}/pad-thickness").Ordinary()
            .Else("The pad drags in the groove and burns.", "Lever travel is lost and the gear is not fully in.")),
        Clearance("interlock-hold", "How far the interlock plunger still holds the second rail", "selector", Mm(1.20m, 2.40m))
            .Opens("interlock-plunger/length").Closes("case/rail-spacing").Counts(1, 2, "rail-1-2/diameter", "rail-3-4/diameter").SafetyCritical()
            .Else("Two gears can go in at once and the wheels lock.", "The plunger is too long and no gear goes in."),
        Clearance("interlock-freedom", "Room for the interlock plunger when one rail moves", "selector", Mm(0.10m, 0.80m))
            .Opens("case/rail-spacing", "rail-1-2/interlock-notch").Counts(-1, 2, "rail-1-2/diameter", "rail-3-4/diameter").Closes("interlock-plunger/length").SafetyCritical()
            .Else("No gear goes in.", "The plunger does not hold the other rail and two gears can go in at once."),
    ];

    private static ClearanceLoop AtRing(string gear, string seat, string pair) => Clearance(gear + "-end-play", $"End play of {gear}", "mainshaft", Mm(0.10m, 0.30m, 0.20m))
        .Opens("mainshaft/" + seat).Closes(gear + "-gear/length", $"hub-{pair}/width").ClosesWith("snap-ring-" + pair, "snap-ring-" + pair)
        .ReadFitted().Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast.");

    private static ClearanceLoop AtWasher(string gear, string seat, string ringSeat, string pair) => Clearance(gear + "-end-play", $"End play of {gear}", "mainshaft", Mm(0.10m, 0.30m, 0.20m))
        .Opens("mainshaft/" + seat).Closes("mainshaft/" + ringSeat, gear + "-gear/length").OpensWith("snap-ring-" + pair, "snap-ring-" + pair)
        .ClosesWith(gear + "-washer", gear + "-washer")
        .ReadFitted().Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast.");

    private static ClearanceLoop DepthAtRing(string gear, string seat, string pair) => Depth(gear, pair, "travel-front")
        .Opens($"hub-{pair}/width", gear + "-gear/length")
        .Closes("mainshaft/" + seat, $"hub-{pair}/front-offset", gear + "-gear/dog-setback")
        .OpensWith("snap-ring-" + pair, "snap-ring-" + pair);

    private static ClearanceLoop DepthAtWasher(string gear, string seat, string ringSeat, string pair) => Depth(gear, pair, "travel-rear")
        .Opens(gear + "-gear/length", "mainshaft/" + ringSeat, $"hub-{pair}/front-offset")
        .Closes("mainshaft/" + seat, gear + "-gear/dog-setback", $"hub-{pair}/width")
        .OpensWith(gear + "-washer", gear + "-washer").ClosesWith("snap-ring-" + pair, "snap-ring-" + pair);

    /// <summary>The input gear stands on the case's front bearing, the hub on the mainshaft that stands on its rear one.</summary>
    private static ClearanceLoop DepthOfFourth => Depth("fourth", "3-4", "travel-rear")
        .Opens("mainshaft/third-seat", "hub-3-4/front-offset", "rear-bearing/inboard-width", "mainshaft/rear-shoulder", "input-bearing/inboard-width", "input-gear/dog-reach")
        .Closes("case/length", "hub-3-4/width").ClosesWith("snap-ring-3-4", "snap-ring-3-4");

    private static ClearanceLoop Depth(string gear, string pair, string travel) => Clearance(gear + "-engagement", $"Engagement depth of {gear}", "mainshaft", Mm(2.60m, 3.60m, 3.10m))
        .Opens($"rail-{pair}/{travel}", $"sleeve-{pair}/half-length")
        .Counts(-1, 2, $"sleeve-{pair}/groove-width").Counts(1, 2, $"fork-{pair}/pad-thickness")
        .Else("The teeth carry on their ends only: they lean, round off and jump out.", "The sleeve runs onto the gear and the fork takes the thrust.");
}
