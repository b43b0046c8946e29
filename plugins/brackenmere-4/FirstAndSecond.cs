namespace Brackenmere4;

/// <summary>The first and second end of the mainshaft. The sleeve carries the reverse teeth on its outside.</summary>
internal static class FirstAndSecond
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Rings.Washer("first-washer", "Selective thrust washer behind first gear", In(0.1175m, 0.1305m), In(0.1160m, 0.1310m)),
        Kind("first-gear", "First gear").Made(Materials.Steel).Carries(GearTrain.First)
            .Measures(
                Size("length", "Thrust face to thrust face, at 4 points").New(In(1.3790m, 1.3810m)).Service(In(1.3720m, 1.3820m)).Averaged(4).By("outside-micrometer").Functional(),
                Size("bore", "Bore, in 3 planes").New(In(1.7522m, 1.7528m)).Service(In(1.7522m, 1.7538m)).Widest(3).By("bore-gauge").Functional(),
                Size("dog-setback", "Front thrust face to the front edge of the engagement teeth").New(In(0.2260m, 0.2280m)).Service(In(0.2250m, 0.2360m)).Averaged(3).By("depth-micrometer").DrawingHolds())
            .Measures(Engagement.Measured).Shows(Engagement.Looked).LookFor(DamageClasses.Gear),
        Rings.Selective("snap-ring-1-2", "Selective snap ring behind the first and second hub", In(0.0835m, 0.0965m)),
        Synchronizer.Hub("hub-1-2", "First and second hub", width: In(1.1230m, 1.1250m), widthLeft: In(1.1100m, 1.1400m),
            offset: In(0.5610m, 0.5630m), offsetLeft: In(0.5500m, 0.5700m), slotLength: In(0.9200m, 0.9300m)),
        Synchronizer.Sleeve("sleeve-1-2", "First and second sleeve, with the reverse teeth", In(0.5630m, 0.5650m), In(0.5500m, 0.5660m), GearTrain.SleeveReverse),
        Kind("second-gear", "Second gear").Made(Materials.Steel).Carries(GearTrain.Second)
            .Measures(
                Size("length", "Thrust face to thrust face, at 4 points").New(In(1.4490m, 1.4510m)).Service(In(1.4420m, 1.4520m)).Averaged(4).By("outside-micrometer").Functional(),
                Size("bore", "Bore, in 3 planes").New(In(1.9397m, 1.9403m)).Service(In(1.9397m, 1.9413m)).Widest(3).By("bore-gauge").Functional(),
                Size("dog-setback", "Rear thrust face to the rear edge of the engagement teeth").New(In(0.2290m, 0.2310m)).Service(In(0.2280m, 0.2390m)).Averaged(3).By("depth-micrometer").DrawingHolds())
            .Measures(Engagement.Measured).Shows(Engagement.Looked).LookFor(DamageClasses.Gear),
    ];

    public static ImmutableArray<Position> Places => Assembly("mainshaft",
        Place("first-washer", "Thrust washer behind first gear"),
        Place("first-gear", "First gear"),
        Place("blocker-ring-1", "Blocker ring of first").Holds("blocker-ring"),
        Place("snap-ring-1-2", "Snap ring behind the first and second hub"),
        Place("sleeve-1-2", "First and second sleeve"),
        Place("hub-1-2", "First and second hub"),
        Place("keys-1-2", "Keys of the first and second hub").Holds("shift-key", 3).Limit("length", In(0.9080m, 0.9150m), In(0.9050m, 0.9150m)),
        Place("key-springs-1-2", "Key springs of the first and second hub").Holds("key-spring", 2),
        Place("blocker-ring-2", "Blocker ring of second").Holds("blocker-ring"),
        Place("second-gear", "Second gear"));
}
