namespace FamilyWords;

/// <summary>
/// What damage means in any of the shipped families. Class names are those of ISO 15243:2017 (bearings) and ISO 10825 (gears); what is done about it is
/// common practice, no source, and a shop may decide otherwise for a duty. A family adds what its own places call for.
/// </summary>
internal static class CommonDamage
{
    public static DamagePolicy[] Everywhere =>
    [
        Scrap("*", "fatigue-crack", "Crack-test its mates."),
        Scrap("*", "tooth-breakage", "Look for the missing piece; crack-test every gear."),
        Scrap("*", "cracked"),
        Scrap("*", "case-worn-through", "The core under the layer is soft: it wears away at once. Look for what starved it of oil."),
        Scrap("*", "macropitting", "Look at the mate: pits come in pairs."),
        Scrap("*", "scuffing"),
        Keep("*", "scuffing", "Watch it.").When("slight"),
        Scrap("*", "overheating", "Blue marks or heat colour: the hardness has gone. Check end play and oil supply."),
        Keep("*", "sliding-wear").When("slight"),
        Scrap("*", "sliding-wear"),
        Scrap("*", "plastic-deformation"),
        Scrap("*", "tooth-hammer", "Look at the sleeve, the ring and the fork that let it happen."),
        Mend("*", "burrs", "Dress them off and go on."),
        Scrap("*", "corrosion"),
        Keep("*", "corrosion", "Stain only; polish off.").When("slight"),
        Scrap("*", "bent"),
        Scrap("*", "cage-broken", "Look for the pieces; inspect every gear."),
        Mend("*", "thread-pulled", "Insert a thread."),
        Keep("*", "micropitting", "Frosting alone is no threat and often heals."),
        Scrap("*", "micropitting").When("severe"),
        Scrap("*", "abrasive-wear", "Flush everything and find the source of the dirt."),
        Scrap("*", "debris-indentation", "Clean the galleries; look for what broke."),
    ];

    public static IEnumerable<DamagePolicy> Bearing(string kind) =>
    [
        Scrap(kind, "subsurface-fatigue", "Spinning it by hand is never evidence: it may spin sweetly and still be spalled."),
        Scrap(kind, "subsurface-fatigue", "Pitted on one side only is thrust, not dirt. Check end play, the type of bearing and the hand of the gears.").On("thrust-side"),
        Scrap(kind, "surface-fatigue", "Oil or dirt."),
        Scrap(kind, "adhesive-wear", "Smeared: too little load or too little oil."),
        Scrap(kind, "moisture-corrosion", "Water, or long storage."),
        Scrap(kind, "fretting-corrosion", "The ring has crept: measure its seat and its bore."),
        Scrap(kind, "false-brinelling", "Marks at the pitch of the rolling elements: standing vibration, or pressed through them."),
        Scrap(kind, "current-leakage"),
        Scrap(kind, "overload-deformation", "Look at how it was pressed."),
        Scrap(kind, "handling-indentation", "Look at how it was pressed."),
        Scrap(kind, "forced-fracture"),
        Scrap(kind, "fatigue-fracture", "Inspect every gear for pieces."),
        Scrap(kind, "thermal-cracking"),
    ];

    public static IEnumerable<DamagePolicy> Gear(string kind) =>
    [
        Keep(kind, "macropitting", "Light pits on a flank may go back on ordinary duty; note them for the next time.").When("slight").On("flank").For("ordinary"),
        Scrap(kind, "macropitting", "Good outside and pitted in its bore is not good.").On("bore"),
        Scrap(kind, "scuffing", "A scored thrust face with heat colour ran without end play: check the clearance before a new one goes in.").On("thrust-face"),
        Scrap(kind, "overheating", "A scored thrust face with heat colour ran without end play: check the clearance before a new one goes in.").On("thrust-face"),
    ];

    public static IEnumerable<DamagePolicy> Ring(string kind) =>
    [
        Scrap(kind, "hand-ground", "Someone ground it to fit: replace it and look for the part that is too wide."),
        Scrap(kind, "dished"),
    ];

    public static IEnumerable<DamagePolicy> Fork(string kind) =>
    [
        Keep(kind, "sliding-wear", "Even light wear goes back.").When("slight"),
        Scrap(kind, "sliding-wear", "One pad worn and the other fresh: the sleeve has been pulling past its place, or the fork is bent. Find which before a new one goes in."),
        Scrap(kind, "overheating", "Burnt pads: the sleeve over-travels, or a hand rests on the lever."),
        Scrap(kind, "bent"),
    ];
}
