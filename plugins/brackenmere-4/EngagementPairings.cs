namespace Brackenmere4;

/// <summary>
/// Engagement teeth against their sleeve: some 36 small teeth carry the whole output. There are no travel stops, and leaned teeth may run with a
/// back-tapered sleeve on condition.
/// </summary>
internal static class EngagementPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        Engages("first-engagement-form", "First gear in its sleeve", "first-gear", "sleeve-1-2"),
        Engages("second-engagement-form", "Second gear in its sleeve", "second-gear", "sleeve-1-2"),
        Engages("third-engagement-form", "Third gear in its sleeve", "third-gear", "sleeve-3-4"),
        Engages("fourth-engagement-form", "Input gear in its sleeve", "input-gear", "sleeve-3-4"),
        CommonPairings.SameTeeth("first-teeth", "First gear and sleeve, engagement teeth", "sleeve-1-2", "first-gear/dog"),
        CommonPairings.SameTeeth("second-teeth", "Second gear and sleeve, engagement teeth", "sleeve-1-2", "second-gear/dog"),
        CommonPairings.SameTeeth("third-teeth", "Third gear and sleeve, engagement teeth", "sleeve-3-4", "third-gear/dog"),
        CommonPairings.SameTeeth("fourth-teeth", "Input gear and sleeve, engagement teeth", "sleeve-3-4", "input-gear/dog"),
        CommonPairings.SameTeeth("hub-teeth-3-4", "Third and fourth sleeve on its hub", "sleeve-3-4", "hub-3-4"),
        CommonPairings.SameTeeth("hub-teeth-1-2", "First and second sleeve on its hub", "sleeve-1-2", "hub-1-2"),
        CommonPairings.Stops("third-stop", "What stops the sleeve in third", "sleeve-3-4", "third-gear/dog", Compatibility.Conditional),
        CommonPairings.Stops("fourth-stop", "What stops the sleeve in fourth", "sleeve-3-4", "input-gear/dog", Compatibility.Conditional),
    ];

    private static PairingRule Engages(string id, string name, string gear, string sleeve) =>
        CommonPairings.Engages(id, name, gear, sleeve).Under(400, Inch(1.6000m)).Option("leaned-without-stop", "conditional");
}
