namespace Ostrand5;

/// <summary>What owners bring, what may lie behind it, and what shows it on the bench. Likelihoods are judgement.</summary>
internal static class Complaints
{
    private static readonly string[] s_gears = ["first", "second", "third", "fourth", "fifth", "reverse"];

    public static ImmutableArray<Symptom> Symptoms =>
    [
        Complaint("jumps-out-under-load", "Jumps out of gear under load", s_gears),
        Complaint("jumps-out-on-overrun", "Jumps out of gear on the overrun", s_gears),
        Complaint("whine-when-hot", "Whines when hot"),
        Complaint("growl", "Growls in every gear"),
        Complaint("clash", "Clashes going into gear", s_gears),
        Complaint("will-not-go-in", "Will not go into gear", s_gears),
        Complaint("two-gears-at-once", "Two gears at once, locked"),
        Complaint("stiff-when-cold", "Stiff to shift when cold").ByItself(0.02, 0.05, 0.12).WordedLoosely(0.3, 0.5, 0.7),
        Complaint("noise-in-neutral", "Noise in neutral, gone with the clutch in").ByItself(0.01, 0.03, 0.08),
        .. OutsideCauses.Symptoms,
    ];

    public static ImmutableArray<Cause> Causes =>
    [
        Because("preload-lost", "The output shaft has lost its preload", 0.12)
            .Brings("whine-when-hot", 0.5, 0.7, 0.9, when: Hot).Brings("jumps-out-on-overrun", 0.1, 0.2, 0.4).Brings("growl", 0.05, 0.15, 0.3)
            .OutOfLimits("output-preload", LimitSide.Above).Found(0.85, 0.95, 0.99).OutOfLimits("output-shaft/turning-torque", LimitSide.Below),
        Because("cup-creeps", "A cup creeps in the aluminium", 0.06)
            .Brings("whine-when-hot", 0.3, 0.5, 0.7, when: Hot).Brings("growl", 0.02, 0.08, 0.15).OutOfLimits("output-cup-fit").OutOfLimits("input-cup-fit").Damaged("main-case", "*", "fretting-corrosion"),
        Because("bearing-spalled", "A tapered bearing is spalled", 0.12)
            .Brings("growl", 0.6, 0.8, 0.95).Brings("whine-when-hot", 0.05, 0.15, 0.3).Brings("noise-in-neutral", 0.3, 0.5, 0.7)
            .Damaged("output-bearing-front", "*", "subsurface-fatigue").Damaged("output-bearing-rear", "*", "subsurface-fatigue")
            .Damaged("input-bearing-front", "*", "subsurface-fatigue").Damaged("input-bearing-rear", "*", "subsurface-fatigue"),
        Because("third-flanks-leaned", "Drive flanks of third's engagement teeth have leaned", 0.06)
            .Brings("jumps-out-under-load", 0.6, 0.8, 0.9, "third").Shown("third-gear", "dog.drive-flank", "leaned", "worn"),
        Because("third-ring-slips", "The blocker ring of third does not grip", 0.10)
            .Brings("clash", 0.6, 0.8, 0.95, "third").Shown("blocker-ring-3", "grip", "slips").OutOfLimits("blocker-ring-3/reserve-gap").OutOfLimits("blocker-ring-3/lining-thickness"),
        Because("second-ring-slips", "The blocker ring of second does not grip", 0.12)
            .Brings("clash", 0.6, 0.8, 0.95, "second").Shown("blocker-ring-2", "grip", "slips").OutOfLimits("blocker-ring-2/reserve-gap").OutOfLimits("blocker-ring-2/lining-thickness"),
        Because("wrong-oil", "The oil does not suit the lined rings", 0.08)
            .Brings("clash", 0.4, 0.6, 0.8).Brings("stiff-when-cold", 0.2, 0.4, 0.6).Shown("oil", "additive", "friction-modified", "extreme-pressure"),
        Because("key-slots-opened", "Key slots of the third and fourth hub opened up", 0.04)
            .Brings("will-not-go-in", 0.5, 0.7, 0.9, "third").Shown("hub-3-4", "key-slot", "opened").Found(0.7, 0.85, 0.95),
        Because("detent-weak", "Detent spring weak or rail notch worn", 0.06)
            .Brings("jumps-out-under-load", 0.1, 0.25, 0.5).Brings("jumps-out-on-overrun", 0.1, 0.3, 0.5)
            .Damaged("detents", "*", "flats", "set").Damaged("rail-3-4", "*", "detent-notch-worn"),
        Because("sleeve-not-fully-in", "The sleeve does not reach far enough", 0.05)
            .Brings("jumps-out-under-load", 0.5, 0.7, 0.9).OutOfLimits("third-engagement", LimitSide.Below).OutOfLimits("fourth-engagement", LimitSide.Below),
        Because("interlock-short", "The interlock plunger is missing or short", 0.01)
            .Brings("two-gears-at-once", 0.7, 0.9, 0.98).OutOfLimits("interlock-hold").OutOfLimits("interlock-plunger/length"),
        .. OutsideCauses.All,
    ];

    public static ImmutableArray<DiagnosticTest> Tests =>
    [
        .. OutsideCauses.Tests,
        TryWhole("oil-asked", "The oil filled is not the grade that the lined rings want", 5).Tells("wrong-oil", 0.7, 0.85, 0.95).FalseAlarm(0.03, 0.08, 0.15),
        TryWhole("whine-warmed", "Quiet cold, the whine comes as the case warms", 15)
            .Tells("preload-lost", 0.7, 0.85, 0.95).Tells("cup-creeps", 0.5, 0.7, 0.9).FalseAlarm(0.05, 0.1, 0.2),
        TryApart("shaft-turned", "The output shaft turns rough or with a click", 2)
            .Tells("bearing-spalled", 0.6, 0.8, 0.95).FalseAlarm(0.03, 0.08, 0.15),
        TryApart("cup-pushed", "A cup moves in its bore by hand", 3).Tells("cup-creeps", 0.75, 0.9, 0.97).FalseAlarm(0.01, 0.03, 0.08),
    ];
}
