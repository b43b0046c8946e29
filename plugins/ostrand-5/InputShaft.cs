namespace Ostrand5;

/// <summary>The input shaft: pinions of first, second and reverse cut on it; third, fourth and fifth run on caged needles.</summary>
internal static class InputShaft
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("input-shaft", "Input shaft").Made(Materials.Steel).Carries(GearTrain.InputFirst, GearTrain.InputSecond, GearTrain.InputReverse)
            .Measures(
                Size("span", "Shoulder of the front bearing to shoulder of the rear one").New(Mm(183.95m, 184.05m)).Service(Mm(183.90m, 184.05m)).Averaged(3).By("height-gauge").DrawingHolds().Functional(),
                Size("third-seat", "Shoulder to the outer wall of the ring groove").New(Mm(61.92m, 61.98m)).Service(Mm(61.90m, 62.00m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("fourth-seat", "Shoulder to the seat of the fourth washer").New(Mm(94.37m, 94.43m)).Service(Mm(94.35m, 94.46m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("fifth-seat", "Rear bearing to the outer wall of the fifth ring groove").New(Mm(56.17m, 56.23m)).Service(Mm(56.15m, 56.26m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("third-journal", "Needle track of third gear, 2 planes at 2 angles").New(Mm(38.997m, 39.007m)).Service(Mm(38.980m, 39.007m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("fourth-journal", "Needle track of fourth gear, 2 planes at 2 angles").New(Mm(38.997m, 39.007m)).Service(Mm(38.980m, 39.007m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("fifth-journal", "Needle track of fifth gear, 2 planes at 2 angles").New(Mm(33.997m, 34.007m)).Service(Mm(33.980m, 34.007m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("bearing-seat", "Seats of both bearings, thinner").New(Mm(30.015m, 30.025m)).Service(Mm(30.013m, 30.025m)).Thinnest(4).By("outside-micrometer").DrawingHolds(),
                Size("case-depth", "Depth of the hardened layer").New(Mm(0.50m, 0.80m)).By("hardness-tester").DrawingHolds(),
                Size("runout", "Runout at the middle track, between centres").New(Mm(0m, 0.02m)).Service(MmAtMost(0.05m)).Spread(8).By("dial-indicator").Functional())
            .Shows(Attributes.RatioSet)
            .LookFor(DamageClasses.Shaft).LookFor("tooth-breakage"),
        Parts.Tapered("input-bearing", "Tapered bearing of the input shaft", Mm(17.20m, 17.30m), Mm(55.000m, 55.015m), Mm(29.990m, 30.000m)),
        Parts.Shim("input-shim", "Shim of the input shaft"),
        Parts.FreeGear("third-gear", "Third gear", GearTrain.Third, Mm(30.97m, 31.03m), Mm(30.85m, 31.05m), Mm(44.015m, 44.025m), Mm(6.47m, 6.53m)),
        Parts.FreeGear("fourth-gear", "Fourth gear", GearTrain.Fourth, Mm(29.97m, 30.03m), Mm(29.85m, 30.05m), Mm(44.015m, 44.025m), Mm(6.47m, 6.53m)),
        Parts.FreeGear("fifth-gear", "Fifth gear", GearTrain.Fifth, Mm(27.97m, 28.03m), Mm(27.85m, 28.05m), Mm(39.015m, 39.025m), Mm(6.47m, 6.53m)),
        Parts.Hub("hub-3-4", "Third and fourth hub", Mm(28.97m, 29.03m), Mm(28.70m, 29.20m), Mm(14.47m, 14.53m)),
        Parts.Sleeve("sleeve-3-4", "Third and fourth sleeve"),
        Parts.SelectiveRing("snap-ring-3-4", "Selective snap ring behind the third and fourth hub", Mm(1.60m, 1.90m)),
        Parts.Washer("fourth-washer", "Selective thrust washer behind fourth gear", Mm(3.85m, 4.15m), Mm(3.80m, 4.20m)),
        Parts.Hub("hub-5", "Fifth hub", Mm(25.97m, 26.03m), Mm(25.70m, 26.20m), Mm(12.97m, 13.03m)),
        Parts.Sleeve("sleeve-5", "Fifth sleeve"),
        Parts.SelectiveRing("snap-ring-5", "Selective snap ring before the fifth hub", Mm(1.85m, 2.15m)),
    ];

    public static ImmutableArray<Position> Places => Assembly("input-shaft",
        Place("snap-ring-5", "Snap ring before the fifth hub"),
        Place("sleeve-5", "Fifth sleeve"),
        Place("hub-5", "Fifth hub"),
        Place("keys-5", "Keys of the fifth hub").Holds("shift-key", 3),
        Place("blocker-ring-5", "Blocker ring of fifth").Holds("blocker-ring"),
        Place("fifth-gear", "Fifth gear"),
        Place("needles-5", "Caged needles of fifth").Holds("needle-cage"),
        Place("input-bearing-rear", "Rear tapered bearing of the input shaft").Holds("input-bearing"),
        Place("input-shim", "Shims of the input shaft").Pack("input-shim", 3),
        Place("input-shaft", "Input shaft"),
        Place("input-bearing-front", "Front tapered bearing of the input shaft").Holds("input-bearing"),
        Place("fourth-washer", "Thrust washer behind fourth gear"),
        Place("fourth-gear", "Fourth gear"),
        Place("needles-4", "Caged needles of fourth").Holds("needle-cage"),
        Place("blocker-ring-4", "Blocker ring of fourth").Holds("blocker-ring"),
        Place("snap-ring-3-4", "Snap ring behind the third and fourth hub"),
        Place("sleeve-3-4", "Third and fourth sleeve"),
        Place("hub-3-4", "Third and fourth hub"),
        Place("keys-3-4", "Keys of the third and fourth hub").Holds("shift-key", 3),
        Place("blocker-ring-3", "Blocker ring of third").Holds("blocker-ring"),
        Place("third-gear", "Third gear"),
        Place("needles-3", "Caged needles of third").Holds("needle-cage"));
}
