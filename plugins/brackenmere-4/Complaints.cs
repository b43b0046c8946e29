namespace Brackenmere4;

/// <summary>What owners bring, what may lie behind it, and what shows it on the bench. Likelihoods are judgement.</summary>
internal static class Complaints
{
    private static readonly string[] s_gears = ["first", "second", "third", "fourth", "reverse"];

    public static ImmutableArray<Symptom> Symptoms =>
    [
        Complaint("jumps-out-under-load", "Jumps out of gear under load", s_gears).ByItself(0.01, 0.03, 0.08).WordedLoosely(0.3, 0.5, 0.7),
        Complaint("jumps-out-on-overrun", "Jumps out of gear on the overrun", s_gears),
        Complaint("noise-gone-in-direct", "Noise in every gear that goes away in direct"),
        Complaint("noise-in-every-gear", "Noise in every gear, direct too"),
        Complaint("noise-in-neutral", "Noise in neutral, gone with the clutch in"),
        Complaint("noise-in-one-gear", "Noise in one gear", s_gears),
        Complaint("noise-in-reverse", "Noise in reverse only"),
        Complaint("clash", "Clashes going into gear", s_gears),
        Complaint("will-not-go-in", "Will not go into gear", s_gears),
        Complaint("hard-to-leave", "Will not come out of gear under load", s_gears),
        Complaint("two-gears-at-once", "Two gears at once, locked"),
        Complaint("stiff-when-hot", "Stiff or galled when hot"),
        Complaint("growl-on-overrun", "Growls on the overrun"),
        Complaint("leak-front", "Leaks at the front"),
        Complaint("leak-rear", "Leaks at the rear").ByItself(0.01, 0.03, 0.08),
        Complaint("leak-side", "Leaks at the side or below").ByItself(0.02, 0.05, 0.12),
        Complaint("noise-under-load", "Noise under load only, in any gear").ByItself(0.01, 0.04, 0.10),
        Complaint("rattle-at-idle", "Rattles at idle, gone with the clutch in").ByItself(0.02, 0.06, 0.15),
        .. OutsideCauses.Symptoms,
    ];

    public static ImmutableArray<Cause> Causes => [.. Engagement, .. Play, .. Bearings, .. Shifting, .. Oil, .. OutsideCauses.All];

    private static Cause[] Engagement =>
    [
        Because("third-flanks-leaned", "Drive flanks of third's engagement teeth have leaned", 0.10)
            .Brings("jumps-out-under-load", 0.6, 0.8, 0.9, "third")
            .Shown("third-gear", "dog.drive-flank", "leaned", "worn").Found(0.7, 0.85, 0.95, 0.04).OutOfLimits("third-gear/dog.drive-flank-angle"),
        Because("fourth-flanks-leaned", "Drive flanks of the input gear's engagement teeth have leaned", 0.05)
            .Brings("jumps-out-under-load", 0.6, 0.8, 0.9, "fourth")
            .Shown("input-gear", "dog.drive-flank", "leaned", "worn").OutOfLimits("input-gear/dog.drive-flank-angle"),
        Because("third-coast-flanks-leaned", "Coast flanks of third's engagement teeth have leaned", 0.04)
            .Brings("jumps-out-on-overrun", 0.6, 0.8, 0.9, "third")
            .Shown("third-gear", "dog.coast-flank", "leaned", "worn").OutOfLimits("third-gear/dog.coast-flank-angle"),
        Because("third-teeth-spent", "Engagement teeth of third rounded or short", 0.05)
            .Brings("jumps-out-under-load", 0.5, 0.7, 0.9, "third").Brings("jumps-out-on-overrun", 0.3, 0.5, 0.8, "third")
            .Shown("third-gear", "dog.drive-flank", "rounded", "short", "spent").OutOfLimits("third-gear/dog.length"),
        Because("sleeve-not-fully-in", "The sleeve does not reach far enough", 0.06)
            .Brings("jumps-out-under-load", 0.5, 0.7, 0.9)
            .OutOfLimits("third-engagement").OutOfLimits("fourth-engagement"),
        Because("mixed-vintage-pair", "Back-tapered teeth and a straight sleeve, or the reverse", 0.04)
            .Brings("jumps-out-under-load", 0.4, 0.6, 0.8, "third").Brings("hard-to-leave", 0.1, 0.3, 0.5, "third")
            .Shown("third-gear", "dog.form", "back-tapered").Found(0.3, 0.5, 0.7, 0.3),
        Because("sleeve-over-travels", "The sleeve pulls past its place", 0.04)
            .Brings("jumps-out-under-load", 0.1, 0.3, 0.5).Brings("hard-to-leave", 0.2, 0.4, 0.6)
            .Shown("fork-3-4", "input-pad", "worn", "burnt").Shown("fork-3-4", "output-pad", "worn", "burnt").OutOfLimits("fork-3-4/pad-difference"),
    ];

    private static Cause[] Play =>
    [
        Because("third-end-play-loose", "Third gear has too much end play", 0.08)
            .Brings("jumps-out-under-load", 0.2, 0.4, 0.6, "third").Brings("jumps-out-on-overrun", 0.2, 0.4, 0.6, "third")
            .OutOfLimits("third-end-play", LimitSide.Above).Found(0.85, 0.95, 0.99),
        Because("third-set-tight", "Third gear was set up without end play", 0.03)
            .Brings("stiff-when-hot", 0.6, 0.8, 0.95, when: Hot)
            .Damaged("third-gear", "thrust-face", "scuffing", "overheating").OutOfLimits("third-end-play", LimitSide.Below).Found(0.8, 0.92, 0.98),
        Because("counter-set-tight", "The countergear was set up without end play", 0.02)
            .Brings("stiff-when-hot", 0.5, 0.7, 0.9, when: Hot)
            .OutOfLimits("counter-end-play", LimitSide.Below).Found(0.8, 0.92, 0.98).Damaged("counter-washer-front", "*", "scuffing", "overheating"),
        Because("third-rocks", "Third gear rocks on its journal", 0.08)
            .Brings("jumps-out-under-load", 0.2, 0.4, 0.6, "third").Brings("jumps-out-on-overrun", 0.3, 0.5, 0.7, "third")
            .OutOfLimits("third-radial-play").OutOfLimits("mainshaft/third-journal").OutOfLimits("third-gear/bore"),
        Because("detent-weak", "Detent spring weak or rail notch worn", 0.08)
            .Brings("jumps-out-under-load", 0.1, 0.25, 0.5).Brings("jumps-out-on-overrun", 0.1, 0.3, 0.5)
            .Damaged("detents", "*", "flats", "set").OutOfLimits("detents/load").Damaged("rail-3-4", "*", "detent-notch-worn"),
        Because("counter-end-play-loose", "Countergear has too much end play", 0.06)
            .Brings("growl-on-overrun", 0.3, 0.5, 0.7).Brings("noise-gone-in-direct", 0.1, 0.3, 0.5)
            .OutOfLimits("counter-end-play", LimitSide.Above).Found(0.85, 0.95, 0.99).OutOfLimits("counter-washer-front/thickness", LimitSide.Below)
            .Brings("noise-under-load", 0.1, 0.25, 0.45),
    ];

    private static Cause[] Bearings =>
    [
        Because("pocket-track-pitted", "The track of the pocket rollers is pitted", 0.08)
            .Brings("noise-gone-in-direct", 0.6, 0.8, 0.95).Brings("jumps-out-on-overrun", 0.1, 0.2, 0.4)
            .Damaged("mainshaft", "nose", "macropitting").Damaged("input-gear", "pocket-bore", "macropitting").OutOfLimits("pocket-clearance")
            .OutOfLimits("pocket-rollers/count"),
        Because("countergear-side-worn", "Countergear, its needles or the constant mesh worn", 0.10)
            .Brings("noise-gone-in-direct", 0.5, 0.7, 0.9).Brings("noise-in-neutral", 0.4, 0.6, 0.8).Brings("rattle-at-idle", 0.2, 0.4, 0.6)
            .Damaged("countergear", "*", "macropitting", "scuffing").Damaged("countershaft", "*", "macropitting", "case-worn-through")
            .OutOfLimits("counter-needle-clearance-front").OutOfLimits("counter-needle-clearance-rear"),
        Because("input-bearing-spent", "Input bearing spent", 0.10)
            .Brings("noise-in-every-gear", 0.5, 0.7, 0.9).Brings("noise-in-neutral", 0.5, 0.7, 0.9)
            .Damaged("input-bearing", "*", "subsurface-fatigue", "surface-fatigue").Found(0.5, 0.7, 0.9).OutOfLimits("input-bearing/radial-clearance"),
        Because("input-bearing-thrust", "The input bearing was loaded from one side: thrust", 0.04)
            .Brings("noise-in-every-gear", 0.4, 0.6, 0.8).Brings("noise-in-neutral", 0.2, 0.4, 0.6)
            .Damaged("input-bearing", "one-side", "subsurface-fatigue", "surface-fatigue").Found(0.4, 0.6, 0.8, 0.003)
            .Damaged("input-bearing", "thrust-side", "subsurface-fatigue", "surface-fatigue").Found(0.4, 0.6, 0.8, 0.003),
        Because("dirt-in-the-oil", "Dirt or chips went through the bearings", 0.06)
            .Brings("noise-in-every-gear", 0.2, 0.4, 0.6)
            .Damaged("input-bearing", "*", "debris-indentation", "abrasive-wear").Found(0.6, 0.8, 0.9, 0.02)
            .Damaged("rear-bearing", "*", "debris-indentation", "abrasive-wear").Found(0.6, 0.8, 0.9, 0.02),
        Because("rear-bearing-spent", "Rear bearing spent", 0.08)
            .Brings("noise-in-every-gear", 0.6, 0.8, 0.95).Brings("noise-under-load", 0.3, 0.5, 0.7)
            .Damaged("rear-bearing", "*", "subsurface-fatigue", "surface-fatigue").Found(0.5, 0.7, 0.9).OutOfLimits("rear-bearing/radial-clearance"),
        Because("third-mesh-worn", "The teeth of third are worn or chipped", 0.04)
            .Brings("noise-in-one-gear", 0.6, 0.8, 0.95, "third")
            .Damaged("third-gear", "*", "macropitting", "tooth-breakage", "burrs"),
        Because("idler-worn", "Reverse idler or its bush worn", 0.06)
            .Brings("noise-in-reverse", 0.6, 0.8, 0.95)
            .Damaged("reverse-idler", "*", "macropitting", "tooth-breakage", "burrs").OutOfLimits("idler-clearance"),
    ];

    private static Cause[] Shifting =>
    [
        Because("third-ring-slips", "The blocker ring of third does not grip", 0.10)
            .Brings("clash", 0.6, 0.8, 0.95, "third")
            .Shown("blocker-ring-3", "grip", "slips").Found(0.7, 0.85, 0.95).OutOfLimits("blocker-ring-3/reserve-gap").Damaged("blocker-ring-3", "*", "glazing", "sliding-wear"),
        Because("key-slots-opened", "Key slots of the third and fourth hub opened up", 0.05)
            .Brings("will-not-go-in", 0.5, 0.7, 0.9, "third").Brings("will-not-go-in", 0.5, 0.7, 0.9, "fourth")
            .Shown("hub-3-4", "key-slot", "opened").Found(0.7, 0.85, 0.95).OutOfLimits("key-play-3-4", LimitSide.Above),
        Because("keys-swapped", "Keys of the two hubs swapped", 0.03)
            .Brings("will-not-go-in", 0.4, 0.6, 0.8).Brings("clash", 0.2, 0.4, 0.6)
            .Shown("keys-3-4", "notch", "none").Found(0.8, 0.95, 0.99, 0.02).Shown("keys-1-2", "notch", "one").Found(0.8, 0.95, 0.99, 0.02).OutOfLimits("keys-3-4/length").OutOfLimits("keys-1-2/length"),
        Because("key-springs-weak", "Key springs of the third and fourth hub weak", 0.05)
            .Brings("clash", 0.3, 0.5, 0.7, "third").Brings("clash", 0.3, 0.5, 0.7, "fourth")
            .Damaged("key-springs-3-4", "*", "set").OutOfLimits("key-springs-3-4/load", LimitSide.Below).Found(0.8, 0.9, 0.97),
        Because("fork-bent", "The third and fourth fork is bent", 0.03)
            .Brings("will-not-go-in", 0.2, 0.4, 0.6).Brings("jumps-out-under-load", 0.2, 0.4, 0.6)
            .Damaged("fork-3-4", "*", "bent").Found(0.6, 0.8, 0.9).OutOfLimits("fork-3-4/squareness"),
        Because("hand-on-the-lever", "Driven with a hand on the lever", 0.04).OutsideTheGearbox()
            .Shown("fork-3-4", "input-pad", "worn", "burnt").Shown("fork-3-4", "output-pad", "worn", "burnt"),
        Because("rail-burred", "A rail is burred or bent", 0.05)
            .Brings("will-not-go-in", 0.2, 0.4, 0.6).Brings("hard-to-leave", 0.05, 0.15, 0.3)
            .Damaged("rail-3-4", "*", "burrs", "bent").OutOfLimits("rail-3-4/straightness"),
        Because("interlock-short", "The interlock plunger is missing or short", 0.01)
            .Brings("two-gears-at-once", 0.7, 0.9, 0.98)
            .OutOfLimits("interlock-hold").OutOfLimits("interlock-plunger/length"),
    ];

    private static Cause[] Oil =>
    [
        Because("front-seal-worn", "Input seal or its track worn", 0.08)
            .Brings("leak-front", 0.7, 0.85, 0.95)
            .Damaged("input-seal", "*", "lip-worn").Damaged("input-retainer", "*", "seal-groove").OutOfLimits("input-retainer/face-warp"),
        Because("rear-seal-worn", "Extension seal or bush worn", 0.08)
            .Brings("leak-rear", 0.7, 0.85, 0.95)
            .Damaged("extension-seal", "*", "lip-worn").OutOfLimits("extension/bush-bore"),
        Because("vent-blocked", "The vent is blocked", 0.06)
            .Brings("leak-front", 0.4, 0.6, 0.8).Brings("leak-rear", 0.4, 0.6, 0.8).Brings("leak-side", 0.1, 0.2, 0.4),
        Because("drain-back-blocked", "Oil drain-back at the front is blocked", 0.03)
            .Brings("leak-front", 0.4, 0.6, 0.8),
        Because("case-cracked", "The case is cracked", 0.02)
            .Brings("leak-side", 0.6, 0.8, 0.95).Damaged("case", "*", "cracked").Found(0.7, 0.85, 0.95, 0.005),
        Because("oil-unsuitable", "The oil is the wrong sort, old or low", 0.08)
            .Brings("clash", 0.2, 0.4, 0.6).Brings("stiff-when-hot", 0.05, 0.15, 0.3).Brings("noise-in-neutral", 0.1, 0.2, 0.4)
            .Shown("oil", "additive", "friction-modified", "extreme-pressure").Found(0.3, 0.5, 0.7, 0.05),
    ];

    public static ImmutableArray<DiagnosticTest> Tests =>
    [
        .. OutsideCauses.Tests,
        TryWhole("vent-blown", "The vent does not let air through", 2).Tells("vent-blocked", 0.85, 0.95, 0.99).FalseAlarm(0.01, 0.03, 0.08),
        TryWhole("oil-looked-at", "The oil is low, dark, gritty or of the wrong sort", 5)
            .Tells("oil-unsuitable", 0.6, 0.8, 0.95).Tells("dirt-in-the-oil", 0.4, 0.6, 0.8).Tells("pocket-track-pitted", 0.1, 0.2, 0.4).FalseAlarm(0.05, 0.1, 0.2),
        TryWhole("neutral-listened", "Rolling in neutral with the clutch pressed, the noise stays", 5)
            .Tells("rear-bearing-spent", 0.6, 0.8, 0.95).FalseAlarm(0.05, 0.1, 0.2),
        TryWhole("front-listened", "With a rod to the ear it is loudest at the front", 5)
            .Tells("input-bearing-spent", 0.5, 0.7, 0.9).Tells("input-bearing-thrust", 0.5, 0.7, 0.9).Tells("pocket-track-pitted", 0.2, 0.4, 0.6).FalseAlarm(0.1, 0.2, 0.35),
        TryWhole("third-held-in", "Held in third by hand with force, it stays in under load", 6)
            .Tells("detent-weak", 0.5, 0.7, 0.9).Tells("linkage-obstructed", 0.3, 0.5, 0.7).Tells("sleeve-not-fully-in", 0.2, 0.4, 0.6).FalseAlarm(0.05, 0.15, 0.3),
        TryApart("tips-of-third", "The tips of third's engagement teeth look blunt", 1)
            .Tells("third-teeth-spent", 0.75, 0.9, 0.97).Tells("third-flanks-leaned", 0.05, 0.15, 0.3).FalseAlarm(0.03, 0.08, 0.15),
        TryApart("paint-in-third", "Painted and engaged, third's teeth mark short of their full length", 12)
            .Tells("sleeve-not-fully-in", 0.8, 0.92, 0.98).Tells("fork-bent", 0.2, 0.4, 0.6).Tells("third-flanks-leaned", 0.05, 0.1, 0.2).FalseAlarm(0.02, 0.05, 0.1),
        TryApart("third-rocked", "Third rocks on its journal more than its clearance lets it", 4)
            .Tells("third-rocks", 0.75, 0.9, 0.97).Tells("pocket-track-pitted", 0.1, 0.2, 0.35).FalseAlarm(0.02, 0.06, 0.12),
        TryApart("third-turned-cold", "Third turns with drag when put together cold", 3)
            .Tells("third-set-tight", 0.85, 0.95, 0.99).FalseAlarm(0.01, 0.03, 0.08),
        TryApart("counter-turned-cold", "The countergear turns with drag when put together cold", 3)
            .Tells("counter-set-tight", 0.85, 0.95, 0.99).FalseAlarm(0.01, 0.03, 0.08),
    ];
}
