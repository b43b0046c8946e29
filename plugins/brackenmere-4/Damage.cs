namespace Brackenmere4;

/// <summary>What damage means: what holds everywhere, and what the places of this family call for.</summary>
internal static class Damage
{
    private static readonly string[] s_bearings = ["input-bearing", "rear-bearing", "pocket-rollers", "counter-needles"];
    private static readonly string[] s_gears = ["input-gear", "third-gear", "second-gear", "first-gear", "countergear", "reverse-idler"];
    private static readonly string[] s_forks = ["fork-3-4", "fork-1-2", "fork-reverse"];
    private static readonly string[] s_fixedRings = ["snap-ring-3-4", "snap-ring-1-2", "snap-ring-rear", "input-bearing-ring"];

    public static ImmutableArray<DamagePolicy> All =>
    [
        .. CommonDamage.Everywhere,
        .. s_bearings.SelectMany(CommonDamage.Bearing),
        .. s_gears.SelectMany(CommonDamage.Gear),
        .. s_fixedRings.SelectMany(CommonDamage.Ring),
        .. s_forks.SelectMany(CommonDamage.Fork),
        .. Shafts,
        .. Synchronizers,
        .. Selectors,
        .. Washers,
        .. Housings,
    ];

    private static DamagePolicy[] Shafts =>
    [
        Scrap("mainshaft", "macropitting", "Noise that goes away in direct: the rollers stop turning here in direct. Look at the bore of the input gear too.").On("nose"),
        Scrap("mainshaft", "overheating", "Blue marks on a journal: soft, and the gear on it ran dry or tight.").On("journal"),
        Scrap("mainshaft", "ring-groove-lip-rounded", "The ring can spring off: the clearance it set was never sure."),
        Scrap("mainshaft", "twisted"),
        Scrap("input-gear", "macropitting", "Noise that goes away in direct: the rollers stop turning here in direct. Look at the nose of the mainshaft too.").On("pocket-bore"),
        Mend("input-gear", "plastic-deformation", "Hammered over: it no longer enters its bearing. Turn the edge off and measure, else replace.").On("pilot-nose"),
    ];

    private static DamagePolicy[] Synchronizers =>
    [
        Scrap("blocker-ring", "glazing", "A glazed ring slips on its cone; look at the oil."),
        Scrap("key-spring", "set"),
        Scrap("hub-3-4", "sliding-wear", "A step under the sleeve: hub and sleeve go together.").On("spline"),
        Scrap("hub-1-2", "sliding-wear", "A step under the sleeve: hub and sleeve go together.").On("spline"),
    ];

    private static DamagePolicy[] Selectors =>
    [
        Scrap("shift-rail", "detent-notch-worn", "A worn notch lets it jump out."),
        Scrap("shift-cover", "detent-edge-chipped"),
        Scrap("detent", "flats"),
        Scrap("detent", "set"),
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
        Mend("case", "scuffing", "A washer has turned on its boss and torn it: spot-face it square, and look at what held the washer.").On("counter-boss"),
        Scrap("case", "fretting-corrosion", "A bearing has crept in its bore: measure the bore in 3 planes."),
    ];
}
