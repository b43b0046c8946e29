namespace Kestermere6;

/// <summary>Work permitted, what damage means, complaints and cautions.</summary>
internal static class Rules
{
    private static readonly string[] s_gears = ["first", "second", "third", "fourth", "fifth", "sixth"];
    private static readonly string[] s_bearings = ["input-bearing", "rear-bearing", "needle-cage"];
    private static readonly string[] s_rings = ["snap-ring-1-2", "snap-ring-3-4", "snap-ring-5-6"];
    private static readonly string[] s_toothed = ["input-gear", "countergear", "reverse-idler", .. FreeGear.All.Select(g => g.Position)];
    private static readonly string[] s_lined = ["blocker-ring", "outer-ring", "middle-cone", "inner-ring"];

    public static ImmutableArray<Operation> Operations =>
    [
        Work("face-hub-3-4", "Face the ring side of the hub 3-4", "hub-3-4", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "ring side, square to the bore", MmAtLeast(27.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("face-hub-1-2", "Face the ring side of the hub 1-2", "hub-1-2", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "ring side, square to the bore", MmAtLeast(31.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("face-hub-5-6", "Face the ring side of the hub 5-6", "hub-5-6", 35)
            .Cuts("width", Millimetre(0.30m), Millimetre(0.01m), "ring side, square to the bore", MmAtLeast(29.70m))
            .Careful("Cut less than asked, try, read again.").ThenMeasure("width"),
        Work("grind-first-washer", "Grind the thrust washer of first to thickness", "first-washer", 20)
            .Cuts("thickness", Millimetre(0.05m), Millimetre(0.01m), "plain face", MmAtLeast(3.80m)).ThenMeasure("thickness"),
        Work("grind-sixth-washer", "Grind the thrust washer of sixth to thickness", "sixth-washer", 20)
            .Cuts("thickness", Millimetre(0.05m), Millimetre(0.01m), "plain face", MmAtLeast(3.80m)).ThenMeasure("thickness"),
        Work("dress-idler", "Round the tooth ends of the reverse idler", "reverse-idler", 12).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("dress-countergear", "Blend burrs off the countergear", "countergear", 15).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("press-input-bearing", "Press the input bearing on", "input-bearing", 12).Careful("Press behind a shield and on the ring that is tight, never through the balls."),
        Work("press-rear-bearing", "Press the rear bearing on", "rear-bearing", 15).Careful("Press behind a shield and on the ring that is tight, never through the balls."),
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
        Complaint("two-gears-at-once", "Two gears at once, locked").ByItself(0.001, 0.003, 0.01),
        Complaint("jumps-out-on-overrun", "Jumps out of gear on the overrun", s_gears).ByItself(0.01, 0.03, 0.08).WordedLoosely(0.3, 0.5, 0.7),
        Complaint("will-not-go-in", "Will not go into gear", s_gears).ByItself(0.01, 0.03, 0.08).WordedLoosely(0.3, 0.5, 0.7),
        Complaint("noise-in-neutral", "Noise in neutral, gone with the clutch in").ByItself(0.01, 0.03, 0.08),
        Complaint("growl-on-overrun", "Growls on the overrun").ByItself(0.01, 0.03, 0.08),
        .. OutsideCauses.Symptoms,
    ];

    public static ImmutableArray<Cause> Causes =>
    [
        .. FreeGear.All.Select(g => Because($"{g.Name}-ring-slips", $"The ring of {g.Name} does not grip", 0.08)
            .Brings("clash", 0.6, 0.8, 0.95, g.Name).Shown(g.Ring, "grip", "slips").OutOfLimits(g.Ring + "/reserve-gap")),
        .. FreeGear.All.Select(g => Because($"{g.Name}-flanks-leaned", $"Drive flanks of the engagement teeth of {g.Name} have leaned", 0.04)
            .Brings("jumps-out-under-load", 0.6, 0.8, 0.9, g.Name).Shown(g.Position, "dog.drive-flank", "leaned", "worn")),
        Because("third-over-travels", "The sleeve is drawn past its stop in third", 0.03)
            .Brings("hard-to-leave", 0.4, 0.6, 0.8, "third").OutOfLimits("third-stop-room").Shown("third-gear", "dog.stop", "none").Found(0.3, 0.5, 0.7, 0.02),
        Because("pocket-needles-spent", "The pocket needles are spent", 0.06)
            .Brings("noise-gone-in-direct", 0.6, 0.8, 0.95).OutOfLimits("pocket-clearance").Damaged("pocket-needles", "*", "subsurface-fatigue", "cage-broken"),
        Because("countergear-side-worn", "Countergear, its bearings or the constant mesh worn", 0.05)
            .Brings("noise-gone-in-direct", 0.5, 0.7, 0.9).Brings("noise-in-neutral", 0.4, 0.6, 0.8)
            .Damaged("countergear", "*", "macropitting", "scuffing").Found(0.5, 0.7, 0.9),
        Because("counter-end-play-loose", "Countergear has too much end play", 0.04)
            .Brings("growl-on-overrun", 0.3, 0.5, 0.7).Brings("noise-gone-in-direct", 0.1, 0.3, 0.5)
            .OutOfLimits("counter-washer-front/thickness", LimitSide.Below).OutOfLimits("counter-washer-rear/thickness", LimitSide.Below),
        Because("detent-weak", "Detent spring weak or rail notch worn", 0.06)
            .Brings("jumps-out-under-load", 0.1, 0.25, 0.5).Brings("jumps-out-on-overrun", 0.1, 0.3, 0.5)
            .Damaged("detents", "*", "flats", "set").OutOfLimits("detents/load", LimitSide.Below),
        .. FreeGear.Pairs.Select(p => Because($"key-slots-{p}-opened", $"Key slots of the hub {p} opened up", 0.03)
            .Brings("will-not-go-in", 0.5, 0.7, 0.9).Shown("hub-" + p, "key-slot", "opened").Found(0.7, 0.85, 0.95)),
        Because("oil-unsuitable", "The oil does not suit the linings", 0.08)
            .Brings("clash", 0.4, 0.6, 0.8).Shown("oil", "additive", "friction-modified", "extreme-pressure").Found(0.3, 0.5, 0.7, 0.05),
        Because("interlock-short", "The interlock plunger is missing or short", 0.01)
            .Brings("two-gears-at-once", 0.7, 0.9, 0.98).OutOfLimits("interlock-hold").OutOfLimits("interlock-plunger/length"),
        .. OutsideCauses.All,
    ];

    public static ImmutableArray<DiagnosticTest> Tests =>
    [
        .. OutsideCauses.Tests,
        TryWhole("oil-asked", "The oil filled is not the grade that the linings want", 5).Tells("oil-unsuitable", 0.7, 0.85, 0.95).FalseAlarm(0.03, 0.08, 0.15),
        TryWhole("coast-to-leave", "Off the throttle it comes out of gear easily", 2)
            .Tells("third-over-travels", 0.6, 0.8, 0.95).FalseAlarm(0.1, 0.25, 0.4),
        TryApart("stop-seen", "The sleeve stands past the stop of third when drawn in", 4).Tells("third-over-travels", 0.8, 0.92, 0.98).FalseAlarm(0.01, 0.03, 0.08),
    ];

    public static ImmutableArray<Text> Cautions =>
    [
        Say("demo", "All numbers of this family are made up for a demonstration. Never use them on a real gearbox: the maker's data goes first."),
        Say("person", "The service advises; a person decides and signs. Follow local codes and licensed practice."),
        Say("interlock", "Two gears at once lock the wheels: test the interlock and have a named person sign for it."),
    ];

    private static Text Say(string id, string words) => Text.English($"caution.{id}", words);
}
