namespace FamilyWords;

/// <summary>What lies outside the gearbox and sounds like the gearbox: ruled out before it comes out. Common practice, no source.</summary>
internal static class OutsideCauses
{
    public static Cause ClutchDrags => Because("clutch-drags", "The clutch does not let go", 0.12).OutsideTheGearbox()
        .Brings("clash", 0.6, 0.8, 0.95).Brings("hard-in-every-gear", 0.5, 0.75, 0.9).Brings("will-not-go-in", 0.15, 0.3, 0.5);

    public static Cause Linkage => Because("linkage-obstructed", "The linkage or lever does not get its full travel", 0.10).OutsideTheGearbox()
        .Brings("jumps-out-under-load", 0.3, 0.5, 0.7).Brings("jumps-out-on-overrun", 0.15, 0.3, 0.5).Brings("will-not-go-in", 0.2, 0.4, 0.6)
        .Brings("hard-in-every-gear", 0.3, 0.5, 0.7).Brings("two-gears-at-once", 0.01, 0.03, 0.08);

    public static Cause Mounts => Because("mounts-soft", "Engine or gearbox mounts soft or broken", 0.10).OutsideTheGearbox()
        .Brings("jumps-out-on-overrun", 0.2, 0.35, 0.55).Brings("jumps-out-on-overrun", 0.35, 0.6, 0.8, when: RoughRoad).Brings("jumps-out-under-load", 0.1, 0.2, 0.4);

    public static Cause BellHousing => Because("bell-housing-out", "Bell housing face or bore out of true", 0.05).OutsideTheGearbox()
        .Brings("jumps-out-on-overrun", 0.3, 0.5, 0.7).Brings("noise-in-neutral", 0.1, 0.2, 0.4).Brings("jumps-out-under-load", 0.1, 0.2, 0.4);

    public static Cause ReleaseBearing => Because("release-bearing-spent", "Clutch release bearing spent", 0.08).OutsideTheGearbox()
        .Brings("noise-clutch-in", 0.75, 0.9, 0.97);

    public static Cause CrankPilot => Because("crank-pilot-spent", "Pilot bearing in the crankshaft spent", 0.05).OutsideTheGearbox()
        .Brings("noise-clutch-in", 0.5, 0.7, 0.9).Brings("clash", 0.1, 0.2, 0.4);

    public static ImmutableArray<Symptom> Symptoms =>
    [
        Complaint("hard-in-every-gear", "Hard to shift into every gear").ByItself(0.01, 0.03, 0.08).WordedLoosely(0.3, 0.5, 0.7),
        Complaint("noise-clutch-in", "Noise only with the clutch pressed").ByItself(0.005, 0.02, 0.05).WordedLoosely(0.3, 0.5, 0.7),
    ];

    public static ImmutableArray<DiagnosticTest> Tests =>
    [
        TryWhole("engine-off-shift", "Engine off, it shifts easily into every gear", 3)
            .Tells("clutch-drags", 0.75, 0.9, 0.97).FalseAlarm(0.15, 0.3, 0.5),
        TryWhole("reverse-delay", "Clutch pressed five seconds, reverse still grinds", 3)
            .Tells("clutch-drags", 0.7, 0.85, 0.95).Tells("crank-pilot-spent", 0.2, 0.4, 0.6).FalseAlarm(0.02, 0.05, 0.12),
        TryWhole("linkage-off", "With the linkage disconnected and shifted at the box, the trouble is gone", 20)
            .Tells("linkage-obstructed", 0.75, 0.9, 0.97).FalseAlarm(0.02, 0.05, 0.12),
        TryWhole("mounts-pried", "A mount gives or is torn when pried with a bar", 8)
            .Tells("mounts-soft", 0.7, 0.85, 0.95).FalseAlarm(0.03, 0.08, 0.15),
        TryWhole("noise-comes-with-pedal", "The noise comes as the pedal takes up its free play", 2)
            .Tells("release-bearing-spent", 0.8, 0.92, 0.98).Tells("crank-pilot-spent", 0.02, 0.05, 0.15).FalseAlarm(0.01, 0.03, 0.08),
        TryApart("bell-runout", "Bell housing face or bore reads out of true on the dial", 25)
            .Tells("bell-housing-out", 0.85, 0.95, 0.99).FalseAlarm(0.01, 0.03, 0.08),
    ];

    public static ImmutableArray<Cause> All => [ClutchDrags, Linkage, Mounts, BellHousing, ReleaseBearing, CrankPilot];
}
