namespace FamilyWords;

/// <summary>Rules of the trade that every family puts to its own positions (common practice, no source). A family gives the numbers and may say more.</summary>
internal static class CommonPairings
{
    /// <summary>Engagement teeth in their sleeve. One sleeve serves two gears: a mixture leaves one side wrong whatever its form.</summary>
    public static PairingRule Engages(string id, string name, string gear, string sleeve) => Pairing(id, name, "engagement-form")
        .Role("gear", gear + "/dog").Role("sleeve", sleeve)
        .Parameter("angle-tolerance", new Real(Radians(1), Dimension.Angle))
        .Parameter("friction", new Real(0.05, Dimension.Ratio))
        .Broken(Compatibility.Incompatible, Severity.Malfunction,
            "Straight teeth in a back-tapered sleeve: it over-travels and burns the fork. Back-tapered teeth in a straight sleeve: it rides on the tooth edge and jumps out. Leaned teeth are pushed out under load.")
        .EasedBy("pair-both-gears", "One sleeve serves two gears: fit both gears and the sleeve of one form.",
            Fit(gear, "dog.form", "back-tapered"), Fit(sleeve, "form", "back-tapered"));

    /// <summary>The torque and the radii with which the forces on the flanks are told.</summary>
    public static PairingRule Under(this PairingRule rule, double newtonMetres, Length radius) => rule
        .Parameter("torque", new Real(newtonMetres, Dimension.Torque))
        .Parameter("engagement-radius", radius)
        .Parameter("spline-radius", radius);

    public static PairingRule SameTeeth(string id, string name, string outer, string inner) => Pairing(id, name, "spline-match")
        .Role("outer", outer).Role("inner", inner)
        .Option("compare", "teeth")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "They do not slide into each other.");

    public static PairingRule Stops(string id, string name, string sleeve, string dog, Compatibility whenBroken) => Pairing(id, name, "travel-stop")
        .Role("sleeve", sleeve).Role("stop", dog)
        .Broken(whenBroken, Severity.Wear,
            "Nothing stops a back-tapered sleeve here: set the travel at the rail, check the depth, and look at the fork pads at the first oil change.");

    /// <summary>Parts of a declared set of the same id.</summary>
    public static PairingRule Together(string set, string name, string first, string second) => Pairing(set, name, "matched-set")
        .Role("first", first).Role("second", second)
        .Option("set", set)
        .Broken(Compatibility.Incompatible, Severity.Wear, "Worn to each other and split, or turned on each other: they rock or bind.")
        .EasedBy("as-set", "Replace them as a set.");

    public static PairingRule OnCone(string id, string name, string ring, string gear, Length low, Length high) => Pairing(id, name, "ring-to-cone")
        .Role("ring", ring).Role("gear", gear)
        .Parameter("gap-low", low).Parameter("gap-high", high)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "It does not brake the gear: it clashes, however generous the gap looks.")
        .MendedBy("ring-that-grips", "Fit a ring that grips at once when pressed on by hand; it sits lower.", Fit(ring, "grip", "grips"));

    public static PairingRule OnKeys(string id, string name, string ring, string keys, string hub, int teeth, Length keyRadius) => Pairing(id, name, "ring-slot-to-key")
        .Role("ring", ring).Role("key", keys).Role("hub", hub)
        .Parameter("teeth", new Real(teeth, Dimension.Count)).Parameter("key-radius", keyRadius)
        .Parameter("share-low", new Real(0.20, Dimension.Ratio)).Parameter("share-high", new Real(0.33, Dimension.Ratio))
        .Parameter("share-watch", new Real(0.40, Dimension.Ratio))
        .Option("hub-play", "counted")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The ring indexes too far, tooth meets tooth and the shift is blocked; or not far enough, and it clashes.")
        .MendedBy("sharp-hub", "Fit a hub with sharp key slots, with its sleeve.", Fit(hub, "key-slot", "sharp"));

    public static PairingRule InOil(string id, string name, string ring) => Pairing(id, name, "lining-against-oil")
        .Role("ring", ring).Role("oil", "oil")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "Yellow metal corrodes hot in sulfur-phosphorus oil; friction modifiers make any ring slip.")
        .EasedBy("mild-oil", "Fill an oil with mild additives that the maker names for this ring.", Fit("oil", "additive", "mild"));

    public static PairingRule AlikeTeeth(string id, string name, string ring, string hub) => Pairing(id, name, "attributes-equal")
        .Role("first", ring).Role("second", hub)
        .Option("attribute", "teeth")
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The sleeve can't pass the ring.");

    public static PairingRule Pads(string id, string name, string fork, string sleeve) => Pairing(id, name, "fork-to-groove")
        .Role("fork", fork).Role("sleeve", sleeve)
        .Broken(Compatibility.Incompatible, Severity.Wear, "One pad worn and the other fresh: the sleeve has been pulling past its place, or the fork is bent. A new fork alone wears the same way.")
        .EasedBy("find-the-pull", "Find what pulled: a back-tapered sleeve without a stop, travel set too long, a bent fork. Then fit a sound fork.",
            Fit(fork, "input-pad", "light"), Fit(fork, "output-pad", "light"));

    public static PairingRule Mates(string id, string name, string driver, string driven) => Pairing(id, name, "mesh-pair")
        .Role("driver", driver).Role("driven", driven)
        .Option("keep-together", "yes")
        .Broken(Compatibility.Conditional, Severity.Wear, "A new gear on a worn mate: check backlash and contact on the centres, and expect noise.")
        .EasedBy("both-new", "Change both.");

    public static PairingRule Centres(string id, string name, string driver, string driven, Address distance, Length low, Length high) => Pairing(id, name, "centre-distance")
        .Role("driver", driver).Role("driven", driven).Role("case", distance.Position)
        .Option("case.centre-distance", distance.Characteristic)
        .Parameter("play-low", low).Parameter("play-high", high)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "The teeth bind or barely touch: they are not of this case.");

    public static PairingRule AsMade(string ring, string name) => Pairing(ring + "-as-made", name, "snap-ring-to-groove")
        .Role("ring", ring)
        .Broken(Compatibility.Incompatible, Severity.Malfunction, "A ring ground to fit is soft, thin at one side and springs off. Look for the part that is too wide.")
        .MendedBy("ring-as-made", "Fit a ring of the series as it was made.", Fit(ring, "surface", "as-made"));

    public static PairingRule Washer(string position, string name, string? facing = null)
    {
        var rule = Pairing(position + "-material", name, "washer-material-facing")
            .Role("washer", position)
            .Option("materials", "bronze|steel-backed").Option("choice", "polymer")
            .Broken(Compatibility.Incompatible, Severity.Wear, "The grooved face goes toward the gear, the tang in its slot. A new polymer washer against a sound old metal one is a choice to be recorded with its reason.");
        return facing is null ? rule : rule.Option("facing", facing);
    }
}
