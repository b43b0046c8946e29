namespace Ostrand5;

/// <summary>Sorts of part that this family has several of.</summary>
internal static class Parts
{
    public static PartKind Tapered(string id, string name, Limits width, Limits outside, Limits bore) => Kind(id, name).Made(Materials.Steel)
        .Measures(
            Size("width", "Width over cup and cone, pressed together").New(width).Service(width).Averaged(3).By("height-gauge").DrawingHolds().Functional(),
            Size("outside-diameter", "Outside diameter of the cup").New(outside).Service(outside).Thinnest(3).By("outside-micrometer").DrawingHolds(),
            Size("bore", "Bore of the cone").New(bore).Service(bore).Widest(3).By("bore-gauge").DrawingHolds())
        .Shows(Attributes.TaperedType, Attributes.BearingFeel, Attributes.Supplied)
        .LookFor(DamageClasses.Bearing);

    public static PartKind Shim(string id, string name) => Kind(id, name).Made(Materials.Steel)
        .Measures(Size("thickness", "Thickness, at 4 points").New(Mm(0.09m, 1.01m)).Service(Mm(0.09m, 1.01m)).Averaged(4).By("outside-micrometer").Functional())
        .LookFor("hand-ground", "burrs");

    public static PartKind SelectiveRing(string id, string name, Limits thickness) => Kind(id, name).Made(Materials.Steel).SingleUse()
        .Measures(Size("thickness", "Thickness, at 3 points").New(thickness).Averaged(3).By("outside-micrometer").Functional())
        .Shows(Attributes.Surface)
        .LookFor("hand-ground", "dished");

    public static PartKind Washer(string id, string name, Limits @new, Limits service) => Kind(id, name).Made(Materials.Steel)
        .Measures(Size("thickness", "Thickness, thinnest of 4").New(@new).Service(service).Thinnest(4).By("outside-micrometer").Functional())
        .Shows(Attributes.WasherMaterial)
        .LookFor("scuffing", "sliding-wear", "overheating", "debris-indentation");

    public static PartKind FreeGear(string id, string name, ToothSet teeth, Limits length, Limits lengthLeft, Limits bore, Limits setback) =>
        Kind(id, name).Made(Materials.Steel).Carries(teeth)
            .Measures(
                Size("length", "Thrust face to thrust face, at 4 points").New(length).Service(lengthLeft).Averaged(4).By("outside-micrometer").Functional(),
                Size("bore", "Needle track, in 3 planes").New(bore).Service(new Limits(bore.Low, new Exact(((Exact)bore.High!).Value + Millimetre(0.015m)), null, Demo)).Widest(3).By("bore-gauge").Functional(),
                Size("dog-setback", "Thrust face to the edge of the engagement teeth").New(setback).Service(setback).Averaged(3).By("depth-micrometer").DrawingHolds(),
                Size("dog.length", "Length of the engagement teeth, shortest of 6").New(Mm(4.10m, 4.30m)).Service(MmAtLeast(3.60m)).Thinnest(6).By("caliper").Functional(),
                Angle("dog.drive-flank-angle", "Drive flank of the engagement teeth to the axis; back taper positive").New(Degrees(2.5, 3.5)).Service(Degrees(1.5, 4)).Averaged(3).Functional(),
                Angle("dog.coast-flank-angle", "Coast flank of the engagement teeth to the axis; back taper positive").New(Degrees(2.5, 3.5)).Service(Degrees(1.5, 4)).Averaged(3).Functional(),
                Angle("cone.half-angle", "Half angle of the cone").New(Degrees(7.4, 7.6)).Service(Degrees(7.3, 7.7)),
                Size("cone.diameter", "Cone diameter at the gauge plane").New(Mm(63.98m, 64.02m)).Service(Mm(63.92m, 64.03m)).Thinnest(3).By("outside-micrometer"))
            .Shows(Attributes.DogForm, Attributes.DriveFlank, Attributes.CoastFlank, Attributes.DogStop, Attributes.DogTeeth, Attributes.RatioSet)
            .LookFor(DamageClasses.Gear);

    public static PartKind Hub(string id, string name, Limits width, Limits widthLeft, Limits offset) => Kind(id, name).Made(Materials.Steel)
        .Measures(
            Size("width", "Width over both faces, at 4 points").New(width).Service(widthLeft).Averaged(4).By("outside-micrometer").DrawingHolds().Functional(),
            Size("front-offset", "Shoulder side to the middle of the key slots").New(offset).Service(offset).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
            Size("slot-width", "Width of the key slots, widest").New(Mm(6.05m, 6.10m)).Service(Mm(6.05m, 6.22m)).Widest(3).By("gauge-pins").Functional())
        .Shows(Attributes.KeySlot, Attributes.Teeth)
        .LookFor(DamageClasses.Gear);

    public static PartKind Sleeve(string id, string name, params ToothSet[] teeth) => Kind(id, name).Made(Materials.Steel).Carries(teeth)
        .Measures(
            Size("groove-width", "Fork groove, widest of 4").New(Mm(8.00m, 8.05m)).Service(Mm(8.00m, 8.20m)).Widest(4).By("gauge-blocks"),
            Size("half-length", "Middle of the detent groove to the shorter spline end").New(Mm(14.97m, 15.03m)).Service(Mm(14.70m, 15.05m)).Thinnest(4).By("depth-micrometer").DrawingHolds().Functional(),
            Size("spline-play", "Rock on the hub, read at the groove").New(Mm(0.04m, 0.12m)).Service(MmAtMost(0.22m)).Widest(3).By("dial-indicator").Functional(),
            Angle("drive-flank-angle", "Drive flank of the spline ends to the axis; back taper positive").New(Degrees(2.5, 3.5)).Service(Degrees(1.5, 4)).Averaged(3).Functional())
        .Shows(Attributes.SleeveForm, Attributes.Teeth)
        .LookFor(DamageClasses.Gear);

    public static PartKind Key => Kind("shift-key", "Shift key").Made(Materials.Steel)
        .Measures(
            Size("length", "Length").New(Mm(18.00m, 18.20m)).Service(Mm(17.80m, 18.20m)).Averaged(3).By("outside-micrometer"),
            Size("width", "Width, thinnest").New(Mm(5.96m, 6.00m)).Service(Mm(5.88m, 6.00m)).Thinnest(3).By("outside-micrometer"))
        .LookFor("sliding-wear", "plastic-deformation");

    public static PartKind BlockerRing => Kind("blocker-ring", "Lined blocker ring").Made(Materials.Steel)
        .Measures(
            Size("reserve-gap", "Gap to its gear, pressed home on its own cone, at 3 angles").New(Mm(1.00m, 1.40m)).Service(Mm(0.55m, 1.60m)).BothEnds(3).By("feeler-gauge").Functional(),
            Size("slot-width", "Width of the key slots, widest").New(Mm(8.50m, 8.56m)).Service(Mm(8.50m, 8.70m)).Widest(3).By("gauge-pins").Functional(),
            Size("lining-thickness", "Thickness of the lining, thinnest").New(Mm(0.55m, 0.65m)).Service(MmAtLeast(0.45m)).Thinnest(4).By("loupe-scale"),
            Angle("cone.half-angle", "Half angle of the cone").New(Degrees(7.4, 7.6)).Service(Degrees(7.3, 7.7)))
        .Shows(Attributes.Grip, Attributes.Lining, Attributes.Teeth)
        .LookFor("glazing", "lining-loose", "cracked");

    public static PartKind NeedleCage => Kind("needle-cage", "Caged needle bearing").Made(Materials.Steel)
        .Measures(Size("diameter", "Needle diameter, thinnest of 6").New(Mm(2.498m, 2.500m)).Service(Mm(2.494m, 2.500m)).Thinnest(6).By("outside-micrometer"))
        .LookFor(DamageClasses.Bearing).LookFor("cage-broken");
}
