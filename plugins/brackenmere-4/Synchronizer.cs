namespace Brackenmere4;

/// <summary>What both synchronizers are made of. Hubs and sleeves differ in their sizes, keys in their lengths.</summary>
internal static class Synchronizer
{
    public static PartKind Key => Kind("shift-key", "Shift key").Made(Materials.Steel)
        .Measures(
            Size("length", "Length").Averaged(3).By("outside-micrometer").Functional(),
            Size("width", "Width, thinnest").New(In(0.2470m, 0.2490m)).Service(In(0.2450m, 0.2490m)).Thinnest(3).By("outside-micrometer"),
            Size("hump-height", "Height over the detent hump").New(In(0.2120m, 0.2160m)).Service(InAtLeast(0.2080m)).Thinnest(3).By("outside-micrometer"))
        .Shows(Attributes.KeyNotch)
        .LookFor("sliding-wear", "plastic-deformation");

    public static PartKind KeySpring => Kind("key-spring", "Key spring").Made(Materials.Steel)
        .Measures(Force("load", "Load when expanded to the hub").New(Newtons(34, 42)).Service(Newtons(30, 44)).Functional())
        .LookFor("set");

    public static PartKind BlockerRing => Kind("blocker-ring", "Blocker ring").Made(Materials.Bronze)
        .Measures(
            Size("reserve-gap", "Gap to its gear, pressed home on its own cone, at 3 angles").New(In(0.0350m, 0.0700m)).Service(In(0.0200m, 0.0750m)).BothEnds(3).By("feeler-gauge").Functional(),
            Size("slot-width", "Width of the key slots, widest").New(In(0.3490m, 0.3510m)).Service(In(0.3490m, 0.3560m)).Widest(3).By("gauge-pins").Functional(),
            Size("flatness", "Flatness on a plate").New(In(0m, 0.0010m)).Service(InAtMost(0.0030m)).Spread(4).By("feeler-gauge"),
            Size("thread-land", "Width of the thread crests").New(In(0.0030m, 0.0060m)).Service(InAtMost(0.0120m)).Widest(4).By("loupe-scale"),
            Angle("cone.half-angle", "Half angle of the cone").New(Degrees(6.9, 7.1)).Service(Degrees(6.8, 7.2)),
            Size("cone.diameter", "Cone diameter at the gauge plane").New(In(2.5180m, 2.5200m)).Service(In(2.5180m, 2.5240m)).Widest(3).By("bore-gauge"))
        .Shows(Attributes.Grip, Attributes.Lining, Attributes.Teeth)
        .LookFor("sliding-wear", "glazing", "cracked", "plastic-deformation");

    public static PartKind Hub(string id, string name, Limits width, Limits widthLeft, Limits offset, Limits offsetLeft, Limits slotLength) =>
        Kind(id, name).Made(Materials.Steel)
            .Measures(
                Size("width", "Width over both faces, at 4 points").New(width).Service(widthLeft).Averaged(4).By("outside-micrometer").DrawingHolds().Functional(),
                Size("front-offset", "Front face to the middle of the key slots").New(offset).Service(offsetLeft).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("width-spread", "Difference of the width round the hub").New(In(0m, 0.0005m)).Service(InAtMost(0.0010m)).Spread(4).By("outside-micrometer"),
                Size("slot-width", "Width of the key slots, widest").New(In(0.2510m, 0.2530m)).Service(In(0.2510m, 0.2570m)).Widest(3).By("gauge-pins").Functional(),
                Size("slot-length", "Length of the key slots").New(slotLength).Service(slotLength).Averaged(3).By("caliper"))
            .Shows(Attributes.KeySlot, Attributes.Teeth, Attributes.Vintage)
            .LookFor(DamageClasses.Gear);

    public static PartKind Sleeve(string id, string name, Limits half, Limits halfLeft, params ToothSet[] teeth) =>
        Kind(id, name).Made(Materials.Steel).Carries(teeth)
            .Measures(
                Size("groove-width", "Fork groove, widest of 4").New(In(0.3110m, 0.3130m)).Service(In(0.3110m, 0.3170m)).Widest(4).By("gauge-blocks"),
                Size("half-length", "Middle of the detent groove to the shorter spline end").New(half).Service(halfLeft).Thinnest(4).By("depth-micrometer").DrawingHolds().Functional(),
                Size("spline-play", "Rock on the hub, read at the groove").New(In(0.0015m, 0.0050m)).Service(InAtMost(0.0090m)).Widest(3).By("dial-indicator").Functional(),
                Angle("drive-flank-angle", "Drive flank of the spline ends to the axis; back taper positive").Service(Degrees(-0.5, 5)).Averaged(3).Functional())
            .Shows(Attributes.SleeveForm, Attributes.Teeth, Attributes.Vintage)
            .LookFor(DamageClasses.Gear);
}
