namespace FamilyWords;

/// <summary>
/// What to look for. Bearings by the classes of ISO 15243:2017, gears and shafts by those of ISO 10825; the last few have no standard class and
/// are the shop's own words.
/// </summary>
internal static class DamageClasses
{
    public static readonly string[] Bearing =
    [
        "subsurface-fatigue", "surface-fatigue", "abrasive-wear", "adhesive-wear", "moisture-corrosion", "fretting-corrosion", "false-brinelling",
        "current-leakage", "overload-deformation", "debris-indentation", "handling-indentation", "forced-fracture", "fatigue-fracture", "thermal-cracking",
    ];

    public static readonly string[] Gear =
    [
        "macropitting", "micropitting", "scuffing", "sliding-wear", "overheating", "corrosion", "plastic-deformation", "tooth-hammer", "burrs",
        "fatigue-crack", "tooth-breakage",
    ];

    public static readonly string[] Shaft =
    [
        "macropitting", "scuffing", "sliding-wear", "overheating", "case-worn-through", "plastic-deformation", "burrs", "fatigue-crack",
    ];
}
