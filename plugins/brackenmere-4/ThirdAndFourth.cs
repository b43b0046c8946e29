namespace Brackenmere4;

/// <summary>The third and fourth end of the mainshaft: ring, hub, sleeve, keys, blocker rings and third gear.</summary>
internal static class ThirdAndFourth
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Rings.Selective("snap-ring-3-4", "Selective snap ring before the third and fourth hub", In(0.0865m, 0.0995m)),
        Synchronizer.Hub("hub-3-4", "Third and fourth hub", width: In(1.0610m, 1.0630m), widthLeft: In(1.0450m, 1.0780m),
            offset: In(0.5300m, 0.5320m), offsetLeft: In(0.5150m, 0.5400m), slotLength: In(0.7550m, 0.7650m)),
        Synchronizer.Sleeve("sleeve-3-4", "Third and fourth sleeve", half: In(0.5550m, 0.5570m), halfLeft: In(0.5420m, 0.5580m)),
        Synchronizer.Key,
        Synchronizer.KeySpring,
        Synchronizer.BlockerRing,
        Kind("third-gear", "Third gear").Made(Materials.Steel).Carries(GearTrain.Third)
            .Measures(
                Size("length", "Thrust face to thrust face, at 4 points").New(In(1.4990m, 1.5010m)).Service(In(1.4900m, 1.5120m)).Averaged(4).By("outside-micrometer").Functional(),
                Size("bore", "Bore, in 3 planes").New(In(1.8772m, 1.8778m)).Service(In(1.8772m, 1.8788m)).Widest(3).By("bore-gauge").Functional(),
                Size("dog-setback", "Front thrust face to the front edge of the engagement teeth").New(In(0.2490m, 0.2510m)).Service(In(0.2480m, 0.2600m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
                Size("case-depth", "Depth of the hardened layer of the thrust face").New(In(0.0250m, 0.0350m)).Averaged(1).By("hardness-tester"))
            .Measures(Engagement.Measured)
            .Shows(Engagement.Looked).Shows(Attributes.HandOf("hand", "Which hand are its running teeth?"))
            .LookFor(DamageClasses.Gear),
    ];

    public static ImmutableArray<Position> Places => Assembly("mainshaft",
        Place("snap-ring-3-4", "Snap ring before the third and fourth hub"),
        Place("blocker-ring-4", "Blocker ring of fourth").Holds("blocker-ring"),
        Place("sleeve-3-4", "Third and fourth sleeve"),
        Place("hub-3-4", "Third and fourth hub"),
        Place("keys-3-4", "Keys of the third and fourth hub").Holds("shift-key", 3).Limit("length", In(0.7430m, 0.7490m), In(0.7400m, 0.7490m)),
        Place("key-springs-3-4", "Key springs of the third and fourth hub").Holds("key-spring", 2),
        Place("blocker-ring-3", "Blocker ring of third").Holds("blocker-ring"),
        Place("third-gear", "Third gear"));
}
