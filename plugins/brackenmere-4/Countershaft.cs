namespace Brackenmere4;

/// <summary>Countergear on full-complement needles, and the reverse idler.</summary>
internal static class Countershaft
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("countershaft", "Countershaft").Made(Materials.Steel)
            .Measures(
                Size("diameter", "Diameter at the needle tracks, 2 planes at 2 angles").New(In(0.8748m, 0.8752m)).Service(In(0.8735m, 0.8752m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("runout", "Runout, rolled on the plate").New(In(0m, 0.0005m)).Service(InAtMost(0.0010m)).Spread(4).By("dial-indicator"))
            .LookFor(DamageClasses.Shaft),
        Kind("countergear", "Countergear").Made(Materials.Steel)
            .Carries(GearTrain.CounterInput, GearTrain.CounterThird, GearTrain.CounterSecond, GearTrain.CounterFirst, GearTrain.CounterReverse)
            .Measures(
                Size("length", "Thrust face to thrust face, at 4 points").New(In(7.3570m, 7.3590m)).Service(In(7.3500m, 7.3600m)).Averaged(4).By("outside-micrometer").Functional(),
                Size("bore", "Needle bore at both ends, in 3 planes").New(In(1.1262m, 1.1268m)).Service(In(1.1262m, 1.1275m)).Widest(6).By("bore-gauge").Functional())
            .Shows(
                Attributes.RatioSet, Attributes.Vintage,
                Attributes.HandOf("input.hand", "Which hand are the teeth that the input gear drives?"),
                Attributes.HandOf("third.hand", "Which hand are the teeth that drive third gear?"))
            .LookFor(DamageClasses.Gear).LookFor("case-worn-through"),
        Kind("counter-needles", "Needle rollers of the countergear").Made(Materials.Steel)
            .Measures(
                Number("count", "How many needles are there").New(Exactly(25)).Service(Exactly(25)).Functional(),
                Size("diameter", "Needle diameter, thinnest of 6").New(In(0.1249m, 0.1251m)).Service(In(0.1246m, 0.1251m)).Thinnest(6).By("outside-micrometer"))
            .LookFor(DamageClasses.Bearing),
        Rings.Washer("counter-washer", "Thrust washer of the countergear", In(0.0585m, 0.0715m), In(0.0570m, 0.0720m)),
        Kind("reverse-idler", "Reverse idler").Made(Materials.Steel).Carries(GearTrain.Idler)
            .Measures(
                Size("bore", "Bush bore, in 3 planes").New(In(0.7522m, 0.7530m)).Service(In(0.7522m, 0.7555m)).Widest(3).By("bore-gauge"),
                Size("groove-width", "Fork groove, widest of 4").New(In(0.2500m, 0.2520m)).Service(In(0.2500m, 0.2600m)).Widest(4).By("gauge-blocks"))
            .LookFor(DamageClasses.Gear),
        Kind("idler-shaft", "Reverse idler shaft").Made(Materials.Steel)
            .Measures(Size("diameter", "Diameter, 2 planes at 2 angles").New(In(0.7498m, 0.7502m)).Service(In(0.7485m, 0.7502m)).Thinnest(4).By("outside-micrometer"))
            .LookFor(DamageClasses.Shaft),
    ];

    public static ImmutableArray<Position> Places => Assembly("countershaft",
        Place("idler-shaft", "Reverse idler shaft"),
        Place("reverse-idler", "Reverse idler"),
        Place("countershaft", "Countershaft"),
        Place("countergear", "Countergear"),
        Place("counter-needles-front", "Front needles of the countergear").Holds("counter-needles"),
        Place("counter-needles-rear", "Rear needles of the countergear").Holds("counter-needles"),
        Place("counter-washer-front", "Front thrust washer of the countergear").Holds("counter-washer").Limit("thickness", In(0.0645m, 0.0655m), In(0.0630m, 0.0660m)),
        Place("counter-washer-rear", "Rear thrust washer of the countergear, selective").Holds("counter-washer"));
}
