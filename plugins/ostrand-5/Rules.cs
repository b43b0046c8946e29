namespace Ostrand5;

/// <summary>Work permitted, what damage means, complaints and cautions.</summary>
internal static class Rules
{
    private const string Press = "Press behind a shield and on the ring that is tight, never through the rollers.";
    private static readonly string[] s_bearings = ["input-bearing", "output-bearing", "needle-cage"];
    private static readonly string[] s_rings = ["snap-ring-1-2", "snap-ring-3-4", "snap-ring-5"];
    private static readonly string[] s_gears = ["first-gear", "second-gear", "third-gear", "fourth-gear", "fifth-gear", "reverse-idler"];

    public static ImmutableArray<Operation> Operations =>
    [
        Work("face-hub-3-4", "Face the fourth gear side of the hub", "hub-3-4", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "rear face, square to the bore", MmAtLeast(28.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("face-hub-1-2", "Face the first gear side of the hub", "hub-1-2", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "rear face, square to the bore", MmAtLeast(29.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("grind-first-washer", "Grind the thrust washer of first to thickness", "first-washer", 20)
            .Cuts("thickness", Millimetre(0.05m), Millimetre(0.01m), "plain face", MmAtLeast(2.80m)).ThenMeasure("thickness"),
        Work("dress-rail", "Dress the burrs off a rail", "shift-rail", 8).Mends("burrs").Careful("Leave the notch edges sharp.").ThenMeasure("diameter"),
        Work("dress-idler", "Round the tooth ends of the reverse idler", "reverse-idler", 12).Mends("burrs"),
        Work("insert-thread-main", "Insert a thread in the main case", "main-case", 20).Mends("thread-pulled"),
        Work("insert-thread-rear", "Insert a thread in the rear case", "rear-case", 20).Mends("thread-pulled"),
        Work("fit-input-cups", "Fit the cups of the input shaft, case warmed in the oven", "input-bearing", 25).Careful(Press, "Oven at 80 to 100 degrees; gloves; never a flame on aluminium."),
        Work("fit-output-cups", "Fit the cups of the output shaft, case warmed in the oven", "output-bearing", 25).Careful(Press, "Oven at 80 to 100 degrees; gloves; never a flame on aluminium."),
        Work("strip", "Strip, wash and lay out", "main-case", 160).Careful("Springs and detent balls fly out.", "Never spin a dry bearing with air."),
        Work("assemble", "Assemble, shim and test", "main-case", 260).Careful("Move one rail: every other must be locked. A named person signs for it."),
    ];

    public static ImmutableArray<DamagePolicy> Damage =>
    [
        .. CommonDamage.Everywhere,
        .. s_bearings.SelectMany(CommonDamage.Bearing),
        .. s_gears.SelectMany(CommonDamage.Gear),
        .. s_rings.SelectMany(CommonDamage.Ring),
        .. CommonDamage.Fork("shift-fork"),
        Scrap("input-shim", "hand-ground"),
        Scrap("output-shim", "hand-ground"),
        Scrap("blocker-ring", "glazing", "A glazed lining slips; look at the oil."),
        Scrap("blocker-ring", "lining-loose", "Loose lining goes through every bearing: wash all of them."),
        Scrap("shift-rail", "detent-notch-worn"),
        Scrap("detent", "flats"),
        Scrap("detent", "set"),
        Scrap("main-case", "fretting-corrosion", "A cup has crept in the aluminium: measure its bore in 3 planes."),
        Scrap("rear-case", "fretting-corrosion", "A cup has crept in the aluminium: measure its bore in 3 planes."),
    ];

    public static ImmutableArray<Text> Cautions =>
    [
        Say("demo", "All numbers of this family are made up for a demonstration. Never use them on a real gearbox: the maker's data goes first."),
        Say("person", "The service advises; a person decides and signs. Follow local codes and licensed practice."),
        Say("interlock", "Two gears at once lock the wheels: test the interlock and have a named person sign for it."),
        Say("aluminium", "Read case and shaft at the same temperature, near 20 °C: a warm aluminium case reads long."),
        Say("oven", "Warm the case in an oven, never with a flame; hot parts burn."),
    ];

    private static Text Say(string id, string words) => Text.English($"caution.{id}", words);
}
