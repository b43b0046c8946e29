namespace Brackenmere4;

/// <summary>
/// How deep a sleeve reaches over the engagement teeth with the rail in its notch and the gear pushed away to the end of its play:
/// travel + half the sleeve - distance from the middle of the hub to the edge of the teeth - half the fork's play in the groove.
/// </summary>
internal static class EngagementDepths
{
    public static ImmutableArray<ClearanceLoop> All =>
    [
        Depth("third-engagement", "Engagement depth of third", "rail-3-4/travel-rear", "sleeve-3-4", "fork-3-4")
            .Opens("hub-3-4/front-offset", "third-gear/length")
            .Closes("mainshaft/third-seat", "third-gear/dog-setback")
            .OpensWith("snap-ring-3-4", "snap-ring-3-4"),
        Depth("fourth-engagement", "Engagement depth of fourth", "rail-3-4/travel-front", "sleeve-3-4", "fork-3-4")
            .Opens("rear-bearing/inboard-width", "mainshaft/third-seat", "mainshaft/flange-width", "mainshaft/rear-seat", "input-bearing/inboard-width", "input-gear/dog-reach")
            .Closes("case/length", "hub-3-4/front-offset")
            .ClosesWith("snap-ring-3-4", "snap-ring-3-4"),
        Depth("second-engagement", "Engagement depth of second", "rail-1-2/travel-front", "sleeve-1-2", "fork-1-2")
            .Opens("hub-1-2/width", "second-gear/length")
            .Closes("mainshaft/second-seat", "hub-1-2/front-offset", "second-gear/dog-setback")
            .OpensWith("snap-ring-1-2", "snap-ring-1-2"),
        Depth("first-engagement", "Engagement depth of first", "rail-1-2/travel-rear", "sleeve-1-2", "fork-1-2")
            .Opens("first-gear/length", "mainshaft/second-seat", "hub-1-2/front-offset")
            .Closes("mainshaft/rear-seat", "first-gear/dog-setback", "hub-1-2/width")
            .OpensWith("first-washer", "first-washer")
            .ClosesWith("snap-ring-1-2", "snap-ring-1-2"),
    ];

    private static ClearanceLoop Depth(string id, string name, string travel, string sleeve, string fork) =>
        Clearance(id, name, "mainshaft", In(0.115m, 0.165m, 0.140m))
            .Opens(travel, $"{sleeve}/half-length")
            .Counts(-1, 2, $"{sleeve}/groove-width")
            .Counts(1, 4, $"{fork}/pad-left", $"{fork}/pad-right")
            .Else("The teeth carry on their ends only: they lean, round off and jump out.", "The sleeve runs onto the gear and the fork takes the thrust.");
}
