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
        Complaint("stiff-when-cold", "Stiff to shift when cold"),
    ];

    public static ImmutableArray<Cause> Causes =>
    [
        Because("preload-lost", "The output shaft has lost its preload", 0.12)
            .Brings("whine-when-hot", 0.5, 0.7, 0.9).Brings("jumps-out-on-overrun", 0.1, 0.2, 0.4).OutOfLimits("output-preload").OutOfLimits("output-shaft/turning-torque"),
        Because("cup-creeps", "A cup creeps in the aluminium", 0.06)
            .Brings("whine-when-hot", 0.3, 0.5, 0.7).OutOfLimits("output-cup-fit").OutOfLimits("input-cup-fit").Damaged("main-case", "*", "fretting-corrosion"),
        Because("bearing-spalled", "A tapered bearing is spalled", 0.12)
            .Brings("growl", 0.6, 0.8, 0.95).Damaged("output-bearing-front", "*", "subsurface-fatigue").Damaged("output-bearing-rear", "*", "subsurface-fatigue")
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
            .Brings("will-not-go-in", 0.5, 0.7, 0.9, "third").Shown("hub-3-4", "key-slot", "opened"),
        Because("interlock-short", "The interlock plunger is missing or short", 0.01)
            .Brings("two-gears-at-once", 0.7, 0.9, 0.98).OutOfLimits("interlock-hold").OutOfLimits("interlock-plunger/length"),
    ];
}
