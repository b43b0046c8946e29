namespace Brackenmere4;

/// <summary>
/// End plays and bearing retention: what the rings, washers and gaskets set. Both hubs are held against their rings; a gear runs between its hub
/// and a face of the shaft. The fits are in <see cref="Fits"/>, the depths of engagement in <see cref="EngagementDepths"/>.
/// </summary>
internal static class Clearances
{
    public static ImmutableArray<ClearanceLoop> All => [.. EndPlays, .. EngagementDepths.All, .. Fits.All];

    private static ClearanceLoop[] EndPlays =>
    [
        Clearance("third-end-play", "Third gear end play", "mainshaft", In(0.010m, 0.020m, 0.015m))
            .Opens("mainshaft/third-seat")
            .Closes("hub-3-4/width", "third-gear/length")
            .ClosesWith("snap-ring-3-4", "snap-ring-3-4")
            .ReadFitted()
            .Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast and comes out of its sleeve."),
        Clearance("second-end-play", "Second gear end play", "mainshaft", In(0.006m, 0.018m, 0.012m))
            .Opens("mainshaft/second-seat")
            .Closes("hub-1-2/width", "second-gear/length")
            .ClosesWith("snap-ring-1-2", "snap-ring-1-2")
            .ReadFitted()
            .Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast."),
        Clearance("first-end-play", "First gear end play", "mainshaft", In(0.009m, 0.021m, 0.015m))
            .Opens("mainshaft/rear-seat")
            .Closes("mainshaft/second-seat", "first-gear/length")
            .OpensWith("snap-ring-1-2", "snap-ring-1-2")
            .ClosesWith("first-washer", "first-washer")
            .ReadFitted()
            .Else("Set up tight it galls when hot.", "Loose, the gear walks at each change from drive to coast."),
        Clearance("counter-end-play", "Countergear end play", "countershaft", In(0.006m, 0.018m, 0.012m))
            .Opens("case/counter-span")
            .Closes("countergear/length", "counter-washer-front/thickness")
            .ClosesWith("counter-washer", "counter-washer-rear")
            .ReadFitted().BetweenCelsius(-20, 90, In(0.004m, 0.022m), In(0.004m, 0.022m))
            .Else("Tight, the washers burn.", "Loose, the countergear growls and its mates wear."),
        Clearance("input-retention", "Input bearing under its retainer", "input", In(0m, 0.004m, 0.002m))
            .Opens("input-retainer/recess", "input-bearing/inboard-width")
            .Closes("input-bearing/width")
            .OpensWith("retainer-gasket", "retainer-gasket")
            .Else("The retainer stands on the bearing and its flange leaks or cracks.", "The bearing floats and the input gear walks out of fourth."),
        Clearance("rear-retention", "Rear bearing to its snap ring", "mainshaft", In(0m, 0.004m, 0.001m))
            .Opens("mainshaft/rear-groove")
            .Closes("rear-bearing/width")
            .ClosesWith("snap-ring-rear", "snap-ring-rear")
            .ReadFitted()
            .Else("The ring does not seat in its groove and may spring off.", "The shaft hammers in its bearing."),
        Clearance("extension-nip", "Rear bearing under the extension", "housing", In(0m, 0.004m, 0.002m))
            .Opens("extension/recess", "rear-bearing/inboard-width")
            .Closes("rear-bearing/width")
            .OpensWith("extension-gasket", "extension-gasket")
            .Else("The extension stands on the bearing and its face leaks.", "The bearing floats in the case."),
    ];
}
