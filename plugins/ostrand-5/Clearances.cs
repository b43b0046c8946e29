namespace Ostrand5;

/// <summary>
/// Preload and float of the shafts, end plays, depths of engagement and fits. The tapered bearings are mounted X: their cups stand in the case, so
/// that an aluminium case opens them when hot (span × (23 − 11.5)·10⁻⁶ per kelvin).
/// </summary>
internal static class Clearances
{
    public static ImmutableArray<ClearanceLoop> All => [.. Bearings, .. EndPlays, .. Depths, .. Fits.All];

    private static ClearanceLoop[] Bearings =>
    [
        Clearance("input-float", "Float of the input shaft", "input-shaft", Mm(0.00m, 0.06m, 0.03m))
            .Opens("main-case/input-cup-depth", "rear-case/input-cup-depth")
            .Closes("input-bearing-front/width", "input-bearing-rear/width", "input-shaft/span")
            .ClosesWith("input-shim", "input-shim", 3)
            .ReadUnderLoad().BetweenCelsius(-30, 90, Mm(-0.18m, 0.00m), Mm(0.10m, 0.30m))
            .Else("The bearings are squeezed and run hot before the case opens.", "The shaft knocks and its gears walk."),
        Clearance("output-preload", "Preload of the output shaft, as a negative gap", "output-shaft", Mm(-0.12m, -0.06m, -0.09m))
            .Opens("main-case/output-cup-depth", "rear-case/output-cup-depth")
            .Closes("output-bearing-front/width", "output-bearing-rear/width", "output-shaft/span")
            .ClosesWith("output-shim", "output-shim", 3)
            .ReadUnderLoad().BetweenCelsius(-30, 90, Mm(-0.30m, -0.10m), Mm(0.00m, 0.16m))
            .Else("Too much preload: the bearings run hot and spall.", "Too little: hot, the case opens and the shaft tips."),
    ];

    private static ClearanceLoop[] EndPlays =>
    [
        EndPlay("third-end-play", "Third gear end play", "snap-ring-3-4").Opens("input-shaft/third-seat").Closes("third-gear/length", "hub-3-4/width")
            .ClosesWith("snap-ring-3-4", "snap-ring-3-4"),
        EndPlay("fourth-end-play", "Fourth gear end play", "fourth-washer").Opens("input-shaft/fourth-seat").Closes("input-shaft/third-seat", "fourth-gear/length")
            .OpensWith("snap-ring-3-4", "snap-ring-3-4").ClosesWith("fourth-washer", "fourth-washer"),
        EndPlay("fifth-end-play", "Fifth gear end play", "snap-ring-5").Opens("input-shaft/fifth-seat").Closes("fifth-gear/length", "hub-5/width")
            .ClosesWith("snap-ring-5", "snap-ring-5"),
        EndPlay("second-end-play", "Second gear end play", "snap-ring-1-2").Opens("output-shaft/second-seat").Closes("second-gear/length", "hub-1-2/width")
            .ClosesWith("snap-ring-1-2", "snap-ring-1-2"),
        EndPlay("first-end-play", "First gear end play", "first-washer").Opens("output-shaft/first-seat").Closes("output-shaft/second-seat", "first-gear/length")
            .OpensWith("snap-ring-1-2", "snap-ring-1-2").ClosesWith("first-washer", "first-washer"),
    ];

    private static ClearanceLoop[] Depths =>
    [
        Depth("third-engagement", "Engagement depth of third", "rail-3-4/travel-front", "sleeve-3-4", "fork-3-4")
            .Opens("hub-3-4/width", "third-gear/length").Closes("input-shaft/third-seat", "hub-3-4/front-offset", "third-gear/dog-setback")
            .OpensWith("snap-ring-3-4", "snap-ring-3-4"),
        Depth("fourth-engagement", "Engagement depth of fourth", "rail-3-4/travel-rear", "sleeve-3-4", "fork-3-4")
            .Opens("fourth-gear/length", "input-shaft/third-seat", "hub-3-4/front-offset").Closes("input-shaft/fourth-seat", "fourth-gear/dog-setback", "hub-3-4/width")
            .OpensWith("fourth-washer", "fourth-washer").ClosesWith("snap-ring-3-4", "snap-ring-3-4"),
        Depth("second-engagement", "Engagement depth of second", "rail-1-2/travel-front", "sleeve-1-2", "fork-1-2")
            .Opens("hub-1-2/width", "second-gear/length").Closes("output-shaft/second-seat", "hub-1-2/front-offset", "second-gear/dog-setback")
            .OpensWith("snap-ring-1-2", "snap-ring-1-2"),
        Depth("first-engagement", "Engagement depth of first", "rail-1-2/travel-rear", "sleeve-1-2", "fork-1-2")
            .Opens("first-gear/length", "output-shaft/second-seat", "hub-1-2/front-offset").Closes("output-shaft/first-seat", "first-gear/dog-setback", "hub-1-2/width")
            .OpensWith("first-washer", "first-washer").ClosesWith("snap-ring-1-2", "snap-ring-1-2"),
    ];

    private static ClearanceLoop EndPlay(string id, string name, string reads) =>
        Clearance(id, name, reads.EndsWith("1-2", StringComparison.Ordinal) || reads == "first-washer" ? "output-shaft" : "input-shaft", Mm(0.10m, 0.30m, 0.20m))
            .ReadFitted().Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast.");

    private static ClearanceLoop Depth(string id, string name, string travel, string sleeve, string fork) => Clearance(id, name, "selector", Mm(2.70m, 3.70m, 3.20m))
        .Opens(travel, $"{sleeve}/half-length").Counts(-1, 2, $"{sleeve}/groove-width").Counts(1, 2, $"{fork}/pad-thickness")
        .Else("The teeth carry on their ends only: they lean, round off and jump out.", "The sleeve runs onto the gear and the fork takes the thrust.");
}
