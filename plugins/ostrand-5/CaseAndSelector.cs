namespace Ostrand5;

/// <summary>Aluminium case in two halves, reverse idler, rails and forks.</summary>
internal static class CaseAndSelector
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("main-case", "Main case").Made(Materials.Aluminium)
            .Measures(
                Size("input-cup-depth", "Joint face to the cup seat of the input shaft").New(Mm(167.95m, 168.05m)).Service(Mm(167.90m, 168.10m)).Averaged(3).By("height-gauge").DrawingHolds().Functional(),
                Size("output-cup-depth", "Joint face to the cup seat of the output shaft").New(Mm(174.95m, 175.05m)).Service(Mm(174.90m, 175.10m)).Averaged(3).By("height-gauge").DrawingHolds().Functional(),
                Size("input-cup-bore", "Bore of the input shaft's cup, in 3 planes").New(Mm(54.960m, 54.980m)).Service(Mm(54.960m, 54.995m)).Widest(9).By("bore-gauge").Functional(),
                Size("output-cup-bore", "Bore of the output shaft's cup, in 3 planes").New(Mm(61.955m, 61.975m)).Service(Mm(61.955m, 61.990m)).Widest(9).By("bore-gauge").Functional(),
                Size("centre-distance", "Axis of the input shaft to axis of the output shaft").New(Mm(77.480m, 77.520m)).Service(Mm(77.460m, 77.540m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("input-to-idler", "Axis of the input shaft to axis of the idler").New(Mm(44.97m, 45.03m)).Service(Mm(44.95m, 45.05m)).Averaged(2).By("caliper").DrawingHolds(),
                Size("output-to-idler", "Axis of the output shaft to axis of the idler").New(Mm(79.97m, 80.03m)).Service(Mm(79.95m, 80.05m)).Averaged(2).By("caliper").DrawingHolds(),
                Size("rail-bore", "Rail bores, widest, in 3 planes").New(Mm(14.000m, 14.018m)).Service(Mm(14.000m, 14.060m)).Widest(6).By("bore-gauge"),
                Size("rail-spacing", "Distance of the axes of the two rails").New(Mm(21.97m, 22.03m)).Service(Mm(21.95m, 22.05m)).Averaged(2).By("caliper").DrawingHolds().SafetyCritical())
            .LookFor("cracked", "fretting-corrosion", "thread-pulled"),
        Kind("rear-case", "Rear case").Made(Materials.Aluminium)
            .Measures(
                Size("input-cup-depth", "Joint face to the cup seat of the input shaft").New(Mm(51.97m, 52.03m)).Service(Mm(51.95m, 52.05m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("output-cup-depth", "Joint face to the cup seat of the output shaft").New(Mm(47.97m, 48.03m)).Service(Mm(47.95m, 48.05m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("face-warp", "Warp of the joint face on a plate").New(Mm(0m, 0.03m)).Service(MmAtMost(0.05m)).Spread(4).By("feeler-gauge"))
            .LookFor("cracked", "fretting-corrosion", "thread-pulled"),
        Kind("reverse-idler", "Reverse idler").Made(Materials.Steel).Carries(GearTrain.Idler)
            .Measures(
                Size("bore", "Bush bore, in 3 planes").New(Mm(18.016m, 18.034m)).Service(Mm(18.016m, 18.080m)).Widest(3).By("bore-gauge"),
                Size("groove-width", "Fork groove, widest of 4").New(Mm(7.00m, 7.05m)).Service(Mm(7.00m, 7.25m)).Widest(4).By("gauge-blocks"))
            .LookFor(DamageClasses.Gear),
        Kind("idler-shaft", "Reverse idler shaft").Made(Materials.Steel)
            .Measures(Size("diameter", "Diameter, 2 planes at 2 angles").New(Mm(17.989m, 18.000m)).Service(Mm(17.960m, 18.000m)).Thinnest(4).By("outside-micrometer"))
            .LookFor(DamageClasses.Shaft),
        Kind("shift-rail", "Shift rail").Made(Materials.Steel)
            .Measures(
                Size("diameter", "Diameter, thinnest").New(Mm(13.966m, 13.984m)).Service(Mm(13.930m, 13.984m)).Thinnest(4).By("outside-micrometer"),
                Size("travel-front", "Neutral notch to the front notch").New(Mm(9.45m, 9.55m)).Service(Mm(9.35m, 9.60m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("travel-rear", "Neutral notch to the rear notch").New(Mm(9.45m, 9.55m)).Service(Mm(9.35m, 9.60m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("interlock-notch", "Depth of the interlock notch").New(Mm(1.95m, 2.05m)).Service(Mm(1.90m, 2.15m)).Averaged(2).By("depth-micrometer").SafetyCritical())
            .LookFor("burrs", "scuffing", "bent", "detent-notch-worn"),
        Kind("shift-fork", "Shift fork").Made(Materials.Steel)
            .Measures(
                Size("pad-thickness", "Thickness of the thinner pad").New(Mm(7.60m, 7.65m)).Service(Mm(7.35m, 7.65m)).Thinnest(4).By("outside-micrometer"),
                Size("squareness", "Tips out of square to the rail bore").New(Mm(0m, 0.12m)).Service(MmAtMost(0.40m)).Spread(2).By("dial-indicator"))
            .Shows(Attributes.InputPad, Attributes.OutputPad)
            .LookFor("sliding-wear", "overheating", "bent", "cracked"),
        Kind("interlock-plunger", "Interlock plunger").Made(Materials.Steel)
            .Measures(Size("length", "Length").New(Mm(9.66m, 9.74m)).Service(Mm(9.55m, 9.80m)).Thinnest(3).By("outside-micrometer").SafetyCritical())
            .LookFor("sliding-wear", "plastic-deformation"),
        Kind("detent", "Detent ball and spring").Made(Materials.Steel)
            .Measures(Force("load", "Spring load at the fitted height").New(Newtons(52, 62)).Service(Newtons(46, 64)).Functional())
            .LookFor("flats", "set"),
        Kind("oil", "Oil").SingleUse().Shows(Attributes.Additive, Attributes.Grade),
    ];

    public static ImmutableArray<Position> Front => Assembly("selector",
        Place("detents", "Detent balls and springs").Holds("detent", 3),
        Place("interlock-plunger", "Interlock plunger"),
        Place("rail-1-2", "First and second rail").Holds("shift-rail"),
        Place("rail-3-4", "Third and fourth rail").Holds("shift-rail"),
        Place("fork-1-2", "First and second fork").Holds("shift-fork"),
        Place("fork-3-4", "Third and fourth fork").Holds("shift-fork"),
        Place("fork-5", "Fifth fork").Holds("shift-fork"),
        Place("reverse-idler", "Reverse idler"),
        Place("idler-shaft", "Reverse idler shaft"));

    public static ImmutableArray<Position> Case => Assembly("case",
        Place("rear-case", "Rear case"),
        Place("main-case", "Main case"),
        Place("oil", "Oil to be filled"));
}
