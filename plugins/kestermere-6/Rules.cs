namespace Kestermere6;

/// <summary>Work permitted, what damage means, complaints and cautions.</summary>
internal static class Rules
{
    private static readonly string[] s_gears = ["first", "second", "third", "fourth", "fifth", "sixth"];
    private static readonly string[] s_bearings = ["input-bearing", "rear-bearing", "needle-cage"];
    private static readonly string[] s_rings = ["snap-ring-1-2", "snap-ring-3-4", "snap-ring-5-6"];
    private static readonly string[] s_toothed = ["input-gear", "countergear", .. FreeGear.All.Select(g => g.Position)];
    private static readonly string[] s_lined = ["blocker-ring", "outer-ring", "middle-cone", "inner-ring"];

    public static ImmutableArray<Operation> Operations =>
    [
        Work("face-hub-3-4", "Face the ring side of the hub 3-4", "hub-3-4", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "ring side, square to the bore", MmAtLeast(27.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("dress-rail", "Dress the burrs off a rail", "shift-rail", 8).Mends("burrs").Careful("Leave the notch edges sharp.").ThenMeasure("diameter"),
        Work("insert-thread", "Insert a thread in the case", "case", 20).Mends("thread-pulled"),
        Work("strip", "Strip, wash and lay out", "case", 190).Careful("Springs and detent balls fly out.", "Never spin a dry bearing with air."),
        Work("assemble", "Assemble, set and test", "case", 300).Careful("Move one rail: every other must be locked. A named person signs for it."),
    ];

    public static ImmutableArray<DamagePolicy> Damage =>
    [
        .. CommonDamage.Everywhere,
        .. s_bearings.SelectMany(CommonDamage.Bearing),
        .. s_toothed.SelectMany(CommonDamage.Gear),
        .. s_rings.SelectMany(CommonDamage.Ring),
        .. CommonDamage.Fork("shift-fork"),
        .. s_lined.Select(k => Scrap(k, "glazing", "A glazed lining slips; look at the oil. The whole pack goes.")),
        .. s_lined.Select(k => Scrap(k, "lining-loose", "Loose lining goes through every bearing: wash all of them.")),
        Scrap("shift-rail", "detent-notch-worn"),
        Scrap("detent", "flats"),
        Scrap("detent", "set"),
        Scrap("case", "fretting-corrosion"),
    ];

    public static ImmutableArray<Symptom> Symptoms =>
    [
        Complaint("jumps-out-under-load", "Jumps out of gear under load", s_gears),
        Complaint("clash", "Clashes going into gear", s_gears),
        Complaint("hard-to-leave", "Will not come out of gear under load", s_gears),
        Complaint("noise-gone-in-direct", "Noise in every gear that goes away in direct"),
        Complaint("two-gears-at-once", "Two gears at once, locked"),
    ];

    public static ImmutableArray<Cause> Causes =>
    [
        .. FreeGear.All.Select(g => Because($"{g.Name}-ring-slips", $"The ring of {g.Name} does not grip", 0.08)
            .Brings("clash", 0.6, 0.8, 0.95, g.Name).Shown(g.Ring, "grip", "slips").OutOfLimits(g.Ring + "/reserve-gap")),
        .. FreeGear.All.Select(g => Because($"{g.Name}-flanks-leaned", $"Drive flanks of the engagement teeth of {g.Name} have leaned", 0.04)
            .Brings("jumps-out-under-load", 0.6, 0.8, 0.9, g.Name).Shown(g.Position, "dog.drive-flank", "leaned", "worn")),
        Because("third-over-travels", "The sleeve is drawn past its stop in third", 0.03)
            .Brings("hard-to-leave", 0.4, 0.6, 0.8, "third").OutOfLimits("third-stop-room").Shown("third-gear", "dog.stop", "none"),
        Because("pocket-needles-spent", "The pocket needles are spent", 0.06)
            .Brings("noise-gone-in-direct", 0.6, 0.8, 0.95).OutOfLimits("pocket-clearance").Damaged("pocket-needles", "*", "subsurface-fatigue", "cage-broken"),
        Because("interlock-short", "The interlock plunger is missing or short", 0.01)
            .Brings("two-gears-at-once", 0.7, 0.9, 0.98).OutOfLimits("interlock-hold").OutOfLimits("interlock-plunger/length"),
    ];

    public static ImmutableArray<Text> Cautions =>
    [
        Say("demo", "All numbers of this family are made up for a demonstration. Never use them on a real gearbox: the maker's data goes first."),
        Say("person", "The service advises; a person decides and signs. Follow local codes and licensed practice."),
        Say("interlock", "Two gears at once lock the wheels: test the interlock and have a named person sign for it."),
    ];

    private static Text Say(string id, string words) => Text.English($"caution.{id}", words);
}
