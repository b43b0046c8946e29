namespace Ostrand5;

/// <summary>The output shaft: first and second run on caged needles; the rows of third, fourth and fifth are cut on it.</summary>
internal static class OutputShaft
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("output-shaft", "Output shaft").Made(Materials.Steel).Carries(GearTrain.OutputThird, GearTrain.OutputFourth, GearTrain.OutputFifth)
            .Measures(
                Size("span", "Shoulder of the front bearing to shoulder of the rear one").New(Mm(183.45m, 183.55m)).Service(Mm(183.40m, 183.55m)).Averaged(3).By("height-gauge").DrawingHolds().Functional(),
                Size("second-seat", "Shoulder to the outer wall of the ring groove").New(Mm(63.92m, 63.98m)).Service(Mm(63.90m, 64.00m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("first-seat", "Shoulder to the seat of the first washer").New(Mm(98.37m, 98.43m)).Service(Mm(98.35m, 98.46m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("first-journal", "Needle track of first gear, 2 planes at 2 angles").New(Mm(38.997m, 39.007m)).Service(Mm(38.980m, 39.007m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("second-journal", "Needle track of second gear, 2 planes at 2 angles").New(Mm(38.997m, 39.007m)).Service(Mm(38.980m, 39.007m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("bearing-seat", "Seats of both bearings, thinner").New(Mm(35.015m, 35.025m)).Service(Mm(35.013m, 35.025m)).Thinnest(4).By("outside-micrometer").DrawingHolds(),
                Torque("turning-torque", "Torque to turn the shaft alone, bearings oiled").New(NewtonMetres(0.6, 1.2)).Service(NewtonMetres(0.4, 1.4)).Functional(),
                Size("runout", "Runout at the middle track, between centres").New(Mm(0m, 0.02m)).Service(MmAtMost(0.05m)).Spread(8).By("dial-indicator").Functional())
            .Shows(Attributes.RatioSet)
            .LookFor(DamageClasses.Shaft).LookFor("tooth-breakage"),
        Parts.Tapered("output-bearing", "Tapered bearing of the output shaft", Mm(18.95m, 19.05m), Mm(62.000m, 62.015m), Mm(34.990m, 35.000m)),
        Parts.Shim("output-shim", "Shim of the output shaft"),
        Parts.FreeGear("first-gear", "First gear", GearTrain.First, Mm(32.97m, 33.03m), Mm(32.85m, 33.05m), Mm(44.015m, 44.025m), Mm(5.97m, 6.03m)),
        Parts.FreeGear("second-gear", "Second gear", GearTrain.Second, Mm(31.97m, 32.03m), Mm(31.85m, 32.05m), Mm(44.015m, 44.025m), Mm(5.97m, 6.03m)),
        Parts.Hub("hub-1-2", "First and second hub", Mm(29.97m, 30.03m), Mm(29.70m, 30.20m), Mm(14.97m, 15.03m)),
        Parts.Sleeve("sleeve-1-2", "First and second sleeve, with the reverse teeth", GearTrain.SleeveReverse),
        Parts.SelectiveRing("snap-ring-1-2", "Selective snap ring behind the first and second hub", Mm(1.60m, 1.90m)),
        Parts.Washer("first-washer", "Selective thrust washer behind first gear", Mm(2.85m, 3.15m), Mm(2.80m, 3.20m)),
        Parts.Key,
        Parts.BlockerRing,
        Parts.NeedleCage,
    ];

    public static ImmutableArray<Position> Places => Assembly("output-shaft",
        Place("output-bearing-rear", "Rear tapered bearing of the output shaft").Holds("output-bearing"),
        Place("output-shim", "Shims of the output shaft").Pack("output-shim", 3),
        Place("output-shaft", "Output shaft"),
        Place("output-bearing-front", "Front tapered bearing of the output shaft").Holds("output-bearing"),
        Place("first-washer", "Thrust washer behind first gear"),
        Place("first-gear", "First gear"),
        Place("needles-1", "Caged needles of first").Holds("needle-cage"),
        Place("blocker-ring-1", "Blocker ring of first").Holds("blocker-ring"),
        Place("snap-ring-1-2", "Snap ring behind the first and second hub"),
        Place("sleeve-1-2", "First and second sleeve"),
        Place("hub-1-2", "First and second hub"),
        Place("keys-1-2", "Keys of the first and second hub").Holds("shift-key", 3),
        Place("blocker-ring-2", "Blocker ring of second").Holds("blocker-ring"),
        Place("second-gear", "Second gear"),
        Place("needles-2", "Caged needles of second").Holds("needle-cage"));
}
