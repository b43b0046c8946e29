namespace Brackenmere4;

/// <summary>
/// What damage means. Class names are those of ISO 15243:2017 (bearings) and ISO 10825 (gears); what is done about it is common practice, no
/// source, and a shop may decide otherwise for a duty.
/// </summary>
internal static class Damage
{
    private static readonly string[] s_bearings = ["input-bearing", "rear-bearing", "pocket-rollers", "counter-needles"];
    private static readonly string[] s_gears = ["input-gear", "third-gear", "second-gear", "first-gear", "countergear", "reverse-idler"];
    private static readonly string[] s_forks = ["fork-3-4", "fork-1-2", "fork-reverse"];
    private static readonly string[] s_fixedRings = ["snap-ring-3-4", "snap-ring-1-2", "snap-ring-rear", "input-bearing-ring"];

    public static ImmutableArray<DamagePolicy> All =>
    [
        .. Everywhere,
        .. s_bearings.SelectMany(Bearing),
        .. s_gears.SelectMany(Gear),
        .. Mainshaft,
        .. Synchronizers,
        .. s_fixedRings.SelectMany(Ring),
        .. Selectors,
        .. Washers,
        .. Housings,
    ];

    private static DamagePolicy[] Everywhere =>
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
        Keep("*", "micropitting", "Frosting alone is no threat and often heals."),
        Scrap("*", "micropitting").When("severe"),
        Scrap("*", "abrasive-wear", "Flush everything and find the source of the dirt."),
        Scrap("*", "debris-indentation", "Clean the galleries; look for what broke."),
    ];

    private static IEnumerable<DamagePolicy> Bearing(string kind) =>
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

    private static IEnumerable<DamagePolicy> Gear(string kind) =>
    [
        Keep(kind, "macropitting", "Light pits on a flank may go back on ordinary duty; note them for the next time.").When("slight").On("flank").For("ordinary"),
        Scrap(kind, "macropitting", "Good outside and pitted in its bore is not good.").On("bore"),
        Scrap(kind, "macropitting", "Noise that goes away in direct: the rollers stop turning here in direct.").On("pocket-bore"),
        Scrap(kind, "scuffing", "A scored thrust face with heat colour ran without end play: check the clearance before a new one goes in.").On("thrust-face"),
        Scrap(kind, "overheating", "A scored thrust face with heat colour ran without end play: check the clearance before a new one goes in.").On("thrust-face"),
        Mend(kind, "plastic-deformation", "Hammered over: it no longer enters its bearing. Turn the edge off and measure, else replace.").On("pilot-nose"),
    ];

    private static DamagePolicy[] Mainshaft =>
    [
        Scrap("mainshaft", "macropitting", "Noise that goes away in direct: the rollers stop turning here in direct. Look at the bore of the input gear too.").On("nose"),
        Scrap("mainshaft", "overheating", "Blue marks on a journal: soft, and the gear on it ran dry or tight.").On("journal"),
        Scrap("mainshaft", "ring-groove-lip-rounded", "The ring can spring off: the clearance it set was never sure."),
        Scrap("mainshaft", "twisted"),
    ];

    private static DamagePolicy[] Synchronizers =>
    [
        Scrap("blocker-ring", "glazing", "A glazed ring slips on its cone; look at the oil."),
        Scrap("key-spring", "set"),
        Scrap("hub-3-4", "sliding-wear", "A step under the sleeve: hub and sleeve go together.").On("spline"),
        Scrap("hub-1-2", "sliding-wear", "A step under the sleeve: hub and sleeve go together.").On("spline"),
    ];

    private static IEnumerable<DamagePolicy> Ring(string kind) =>
    [
        Scrap(kind, "hand-ground", "Someone ground it to fit: replace it and look for the part that is too wide."),
        Scrap(kind, "dished"),
    ];

    private static DamagePolicy[] Selectors =>
    [
        Scrap("shift-rail", "bent"),
        Scrap("shift-rail", "detent-notch-worn", "A worn notch lets it jump out."),
        Scrap("shift-cover", "detent-edge-chipped"),
        Scrap("detent", "flats"),
        Scrap("detent", "set"),
        .. s_forks.SelectMany(Fork),
    ];

    private static IEnumerable<DamagePolicy> Fork(string kind) =>
    [
        Keep(kind, "sliding-wear", "Even light wear goes back.").When("slight"),
        Scrap(kind, "sliding-wear", "One pad worn and the other fresh: the sleeve has been pulling past its place, or the fork is bent. Find which before a new one goes in."),
        Scrap(kind, "overheating", "Burnt pads: the sleeve over-travels, or a hand rests on the lever."),
        Scrap(kind, "bent"),
    ];

    private static DamagePolicy[] Washers =>
    [
        Keep("counter-washer", "sliding-wear", "A metal washer in good order may be better than a new polymer one: a choice to be recorded with its reason.").When("slight"),
        Keep("first-washer", "sliding-wear").When("slight"),
    ];

    private static DamagePolicy[] Housings =>
    [
        Scrap("input-seal", "lip-worn"),
        Scrap("extension-seal", "lip-worn"),
        Scrap("input-retainer", "seal-groove"),
        Mend("extension", "scuffing", "Renew the bush."),
        Scrap("case", "fretting-corrosion", "A bearing has crept in its bore: measure the bore in 3 planes."),
        Mend("case", "thread-pulled", "Insert a thread."),
    ];
}
