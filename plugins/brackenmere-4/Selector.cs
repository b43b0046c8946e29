namespace Brackenmere4;

/// <summary>Rails, forks, detents and the interlock, in the cover.</summary>
internal static class Selector
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("shift-cover", "Shift cover").Made(Materials.GreyIron)
            .Measures(
                Size("rail-bore", "Rail bores, widest, in 3 planes").New(In(0.6262m, 0.6268m)).Service(In(0.6262m, 0.6300m)).Widest(6).By("bore-gauge"),
                Size("rail-spacing", "Distance of the axes of the two rails").New(In(0.9990m, 1.0010m)).Service(In(0.9980m, 1.0020m)).Averaged(2).By("caliper").DrawingHolds().SafetyCritical())
            .LookFor("cracked", "detent-edge-chipped"),
        Kind("shift-rail", "Shift rail").Made(Materials.Steel)
            .Measures(
                Size("diameter", "Diameter, thinnest").New(In(0.6248m, 0.6252m)).Service(In(0.6230m, 0.6252m)).Thinnest(4).By("outside-micrometer"),
                Size("travel-front", "Neutral notch to the front notch").New(In(0.3845m, 0.3905m)).Service(In(0.3820m, 0.3920m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("travel-rear", "Neutral notch to the rear notch").New(In(0.3845m, 0.3905m)).Service(In(0.3820m, 0.3920m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("interlock-notch", "Depth of the interlock notch").New(In(0.0780m, 0.0820m)).Service(In(0.0760m, 0.0850m)).Averaged(2).By("depth-micrometer").SafetyCritical(),
                Size("straightness", "Runout, rolled on the plate").New(In(0m, 0.0020m)).Service(InAtMost(0.0050m)).Spread(4).By("feeler-gauge"))
            .LookFor("burrs", "scuffing", "bent", "detent-notch-worn"),
        Fork("fork-3-4", "Third and fourth fork", In(0.2960m, 0.2980m), In(0.2880m, 0.2980m)),
        Fork("fork-1-2", "First and second fork", In(0.2960m, 0.2980m), In(0.2880m, 0.2980m)),
        Fork("fork-reverse", "Reverse fork", In(0.2380m, 0.2400m), In(0.2320m, 0.2400m)),
        Kind("detent", "Detent ball and spring").Made(Materials.Steel)
            .Measures(
                Force("load", "Spring load at the fitted height").New(Newtons(56, 66)).Service(Newtons(50, 68)).Functional(),
                Size("free-length", "Free length of the spring").New(In(1.1800m, 1.2100m)).Service(InAtLeast(1.1500m)).By("caliper"))
            .LookFor("flats", "set"),
        Kind("interlock-plunger", "Interlock plunger").Made(Materials.Steel)
            .Measures(Size("length", "Length").New(In(0.4390m, 0.4410m)).Service(In(0.4330m, 0.4420m)).Thinnest(3).By("outside-micrometer").SafetyCritical())
            .LookFor("sliding-wear", "plastic-deformation"),
    ];

    public static ImmutableArray<Position> Places => Assembly("selector",
        Place("shift-cover", "Shift cover"),
        Place("detents", "Detent balls and springs").Holds("detent", 3),
        Place("interlock-plunger", "Interlock plunger"),
        Place("rail-3-4", "Third and fourth rail").Holds("shift-rail"),
        Place("rail-1-2", "First and second rail").Holds("shift-rail"),
        Place("fork-3-4", "Third and fourth fork"),
        Place("fork-1-2", "First and second fork"),
        Place("fork-reverse", "Reverse fork"));

    private static PartKind Fork(string id, string name, Limits @new, Limits service) => Kind(id, name).Made(Materials.Steel)
        .Measures(
            Size("pad-left", "Thickness of the left pad, thinnest").New(@new).Service(service).Thinnest(2).By("outside-micrometer"),
            Size("pad-right", "Thickness of the right pad, thinnest").New(@new).Service(service).Thinnest(2).By("outside-micrometer"),
            Size("pad-difference", "Left pad less right pad").Service(In(-0.0060m, 0.0060m)).Follows(Of("pad-left"), Of("pad-right", -1)),
            Size("squareness", "Tips out of square to the rail bore").New(In(0m, 0.0050m)).Service(InAtMost(0.0150m)).Spread(2).By("dial-indicator"))
        .Shows(Attributes.InputPad, Attributes.OutputPad)
        .LookFor("sliding-wear", "overheating", "bent", "cracked");
}
