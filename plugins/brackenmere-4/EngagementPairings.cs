namespace Brackenmere4;

/// <summary>
/// Engagement teeth against their sleeve: some 36 small teeth carry the whole output. One sleeve serves two gears, so that a mixture always leaves one
/// side wrong whatever the sleeve's form.
/// </summary>
internal static class EngagementPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        Engages("first-engagement-form", "First gear in its sleeve", "first-gear", "sleeve-1-2"),
        Engages("second-engagement-form", "Second gear in its sleeve", "second-gear", "sleeve-1-2"),
        Engages("third-engagement-form", "Third gear in its sleeve", "third-gear", "sleeve-3-4"),
        Engages("fourth-engagement-form", "Input gear in its sleeve", "input-gear", "sleeve-3-4"),
        Counts("first-teeth", "First gear and sleeve, engagement teeth", "sleeve-1-2", "first-gear/dog"),
        Counts("second-teeth", "Second gear and sleeve, engagement teeth", "sleeve-1-2", "second-gear/dog"),
        Counts("third-teeth", "Third gear and sleeve, engagement teeth", "sleeve-3-4", "third-gear/dog"),
        Counts("fourth-teeth", "Input gear and sleeve, engagement teeth", "sleeve-3-4", "input-gear/dog"),
        Counts("hub-teeth-3-4", "Third and fourth sleeve on its hub", "sleeve-3-4", "hub-3-4"),
        Counts("hub-teeth-1-2", "First and second sleeve on its hub", "sleeve-1-2", "hub-1-2"),
        Stops("third-stop", "What stops the sleeve in third", "sleeve-3-4", "third-gear/dog"),
        Stops("fourth-stop", "What stops the sleeve in fourth", "sleeve-3-4", "input-gear/dog"),
    ];

    private static PairingRule Engages(string id, string name, string gear, string sleeve) => Pairing(id, name, "engagement-form")
        .Role("gear", gear + "/dog").Role("sleeve", sleeve)
        .Option("leaned-without-stop", "conditional")
        .Parameter("angle-tolerance", new Real(Radians(1), Dimension.Angle))
        .Parameter("torque", new Real(400, Dimension.Torque))
        .Parameter("engagement-radius", Inch(1.6000m))
        .Parameter("spline-radius", Inch(1.6000m))
        .Parameter("friction", new Real(0.05, Dimension.Ratio))
        .Broken(Compatibility.Incompatible, Severity.Malfunction,
            "Straight teeth in a back-tapered sleeve: it over-travels and burns the fork. Back-tapered teeth in a straight sleeve: it rides on the tooth edge and jumps out. Leaned teeth are pushed out under load.")
        .EasedBy("pair-both-gears", "One sleeve serves two gears: fit both gears and the sleeve of one form.",
            Fit(gear, "dog.form", "back-tapered"), Fit(sleeve, "form", "back-tapered"));

    private static PairingRule Counts(string id, string name, string outer, string inner) => Pairing(id, name, "spline-match")
        .Role("outer", outer).Role("inner", inner)
        .Option("compare", "teeth")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "They do not slide into each other.");

    private static PairingRule Stops(string id, string name, string sleeve, string dog) => Pairing(id, name, "travel-stop")
        .Role("sleeve", sleeve).Role("stop", dog)
        .Broken(Compatibility.Conditional, Severity.Wear,
            "Nothing stops a back-tapered sleeve here: set the travel at the rail, check the depth, and look at the fork pads at the first oil change.");
}
