namespace Kestermere6;

/// <summary>The sorts of part.</summary>
internal static class Parts
{
    public static ImmutableArray<PartKind> All =>
    [
        .. FreeGear.All.Select(Gear),
        Input, Mainshaft, Countergear, Case,
        Hub("hub-1-2", 32.00m, 16.00m), Hub("hub-3-4", 28.00m, 14.00m), Hub("hub-5-6", 30.00m, 15.00m),
        Sleeve("sleeve-1-2", 16.50m).Carries(GearTrain.SleeveReverse), Sleeve("sleeve-3-4", 15.00m), Sleeve("sleeve-5-6", 15.50m),
        Ring("snap-ring-1-2"), Ring("snap-ring-3-4"), Ring("snap-ring-5-6"),
        Washer("first-washer", 4.00m), Washer("sixth-washer", 4.00m), Washer("counter-washer", 2.50m),
        Key, BlockerRing("blocker-ring", "Blocker ring, single cone", Attributes.Lining), BlockerRing("outer-ring", "Outer ring of a three-cone pack", Attributes.Lining, Attributes.Supplied),
        PackMember("middle-cone", "Middle cone of a three-cone pack"), PackMember("inner-ring", "Inner ring of a three-cone pack"),
        NeedleCage, Bearing("input-bearing", "Input ball bearing"), Bearing("rear-bearing", "Rear ball bearing"),
        Rail, Fork, Interlock, Detent, Idler, IdlerShaft,
        Kind("oil", "Oil").SingleUse().Shows(Attributes.Additive, Attributes.Grade),
    ];

    private static PartKind Gear(FreeGear g) => Kind(g.Position, $"Gear of {g.Name}").Made(Materials.Steel).Carries(g.Teeth)
        .Measures(
            Size("length", "Thrust face to thrust face, at 4 points").New(Around(g.Length, 0.03m)).Service(Mm(g.Length - 0.15m, g.Length + 0.05m)).Averaged(4).By("outside-micrometer").Functional(),
            Size("bore", "Needle track, in 3 planes").New(Mm(50.015m, 50.025m)).Service(Mm(50.015m, 50.040m)).Widest(3).By("bore-gauge").Functional(),
            Size("dog-setback", "Thrust face to the edge of the engagement teeth").New(Around(g.Setback, 0.03m)).Service(Around(g.Setback, 0.20m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
            Size("stop-depth", "Edge of the engagement teeth to the stop").New(Mm(3.95m, 4.05m)).Service(Mm(3.90m, 4.30m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional())
        .Measures(Dog)
        .Shows(Attributes.DogForm, Attributes.DriveFlank, Attributes.CoastFlank, Attributes.DogStop, Attributes.DogTeeth, Attributes.RatioSet)
        .LookFor(DamageClasses.Gear);

    private static Characteristic[] Dog =>
    [
        Size("dog.length", "Length of the engagement teeth, shortest of 6").New(Mm(4.10m, 4.30m)).Service(MmAtLeast(3.60m)).Thinnest(6).By("caliper").Functional(),
        Angle("dog.drive-flank-angle", "Drive flank of the engagement teeth to the axis; back taper positive").New(Degrees(3, 4)).Service(Degrees(2, 4.5)).Averaged(3).Functional(),
        Angle("dog.coast-flank-angle", "Coast flank of the engagement teeth to the axis; back taper positive").New(Degrees(3, 4)).Service(Degrees(2, 4.5)).Averaged(3).Functional(),
        Size("cone.diameter", "Cone diameter at the gauge plane").New(Mm(69.98m, 70.02m)).Service(Mm(69.92m, 70.03m)).Thinnest(3).By("outside-micrometer"),
    ];

    private static PartKind Input => Kind("input-gear", "Input gear").Made(Materials.Steel).Carries(GearTrain.Input)
        .Measures(
            Size("pocket-bore", "Bore of the pocket bearing, in 3 planes").New(Mm(34.015m, 34.025m)).Service(Mm(34.015m, 34.040m)).Widest(3).By("bore-gauge").Functional(),
            Size("dog-reach", "Inner ring of the bearing to the edge of the engagement teeth").New(Around(21.00m, 0.03m)).Service(Around(21.00m, 0.10m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
            Size("stop-depth", "Edge of the engagement teeth to the stop").New(Mm(3.95m, 4.05m)).Service(Mm(3.90m, 4.30m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
            Size("runout", "Runout at the pilot nose").New(Mm(0m, 0.02m)).Service(MmAtMost(0.03m)).Spread(8).By("dial-indicator"))
        .Measures(Dog)
        .Shows(Attributes.DogForm, Attributes.DriveFlank, Attributes.CoastFlank, Attributes.DogStop, Attributes.DogTeeth, Attributes.RatioSet)
        .LookFor(DamageClasses.Gear);

    private static PartKind Mainshaft => Kind("mainshaft", "Mainshaft").Made(Materials.Steel)
        .Measures(
            Seat("third-seat", "Shoulder to the ring groove of the third and fourth hub", 60.00m),
            Seat("second-seat", "Shoulder to the ring groove of the first and second hub", 65.00m),
            Seat("first-seat", "Shoulder to the seat of the first washer", 101.40m),
            Seat("fifth-seat", "Shoulder to the ring groove of the fifth and sixth hub", 59.00m),
            Seat("sixth-seat", "Shoulder to the seat of the sixth washer", 87.40m),
            Size("rear-shoulder", "Shoulder of the rear bearing to the shoulder of third gear").New(Around(206.10m, 0.05m)).Service(Around(206.10m, 0.10m)).Averaged(3).By("height-gauge").DrawingHolds(),
            Size("journal", "Needle tracks, thinnest").New(Mm(44.997m, 45.007m)).Service(Mm(44.980m, 45.007m)).Thinnest(10).By("outside-micrometer").Functional(),
            Size("nose", "Track of the pocket bearing").New(Mm(28.997m, 29.007m)).Service(Mm(28.980m, 29.007m)).Thinnest(4).By("outside-micrometer").Functional(),
            Size("runout", "Runout at the middle track, between centres").New(Mm(0m, 0.02m)).Service(MmAtMost(0.05m)).Spread(8).By("dial-indicator").Functional())
        .LookFor(DamageClasses.Shaft);

    private static PartKind Countergear => Kind("countergear", "Countergear").Made(Materials.Steel)
        .Carries(GearTrain.CounterInput, GearTrain.CounterFirst, GearTrain.CounterSecond, GearTrain.CounterThird, GearTrain.CounterFifth, GearTrain.CounterSixth, GearTrain.CounterReverse)
        .Measures(Size("length", "Thrust face to thrust face, at 4 points").New(Mm(204.77m, 204.83m)).Service(Mm(204.60m, 204.85m)).Averaged(4).By("outside-micrometer").Functional())
        .Shows(Attributes.RatioSet)
        .LookFor(DamageClasses.Gear);

    private static PartKind Case => Kind("case", "Case").Made(Materials.Aluminium)
        .Measures(
            Size("centre-distance", "Axis of the mainshaft to axis of the countershaft").New(Mm(87.98m, 88.02m)).Service(Mm(87.96m, 88.04m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
            Size("length", "Front bearing face to rear bearing face").New(Around(320.00m, 0.05m)).Service(Around(320.00m, 0.10m)).Averaged(4).By("height-gauge").DrawingHolds(),
            Size("counter-to-idler", "Axis of the countershaft to axis of the idler").New(Mm(45.345m, 45.405m)).Service(Mm(45.325m, 45.425m)).Averaged(2).By("caliper").DrawingHolds(),
            Size("main-to-idler", "Axis of the mainshaft to axis of the idler").New(Mm(79.720m, 79.780m)).Service(Mm(79.700m, 79.800m)).Averaged(2).By("caliper").DrawingHolds(),
            Size("counter-span", "Between the faces of the countershaft bosses").New(Mm(209.95m, 210.05m)).Service(Mm(209.90m, 210.15m)).Averaged(3).By("inside-micrometer").DrawingHolds().Functional(),
            Size("rail-spacing", "Distance of the axes of two neighbouring rails").New(Mm(21.97m, 22.03m)).Service(Mm(21.95m, 22.05m)).Averaged(2).By("caliper").DrawingHolds().SafetyCritical())
        .LookFor("cracked", "fretting-corrosion", "thread-pulled");

    private static PartKind Hub(string id, decimal width, decimal offset) => Kind(id, "Hub " + id[4..]).Made(Materials.Steel)
        .Measures(
            Size("width", "Width over both faces, at 4 points").New(Around(width, 0.03m)).Service(Mm(width - 0.30m, width + 0.20m)).Averaged(4).By("outside-micrometer").DrawingHolds().Functional(),
            Size("front-offset", "Shoulder side to the middle of the key slots").New(Around(offset, 0.03m)).Service(Mm(offset - 0.20m, offset + 0.20m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
            Size("slot-width", "Width of the key slots, widest").New(Mm(6.05m, 6.10m)).Service(Mm(6.05m, 6.22m)).Widest(3).By("gauge-pins").Functional())
        .Shows(Attributes.KeySlot, Attributes.Teeth)
        .LookFor(DamageClasses.Gear);

    private static PartKind Sleeve(string id, decimal half) => Kind(id, "Sleeve " + id[7..]).Made(Materials.Steel)
        .Measures(
            Size("groove-width", "Fork groove, widest of 4").New(Mm(8.00m, 8.05m)).Service(Mm(8.00m, 8.20m)).Widest(4).By("gauge-blocks"),
            Size("half-length", "Middle of the detent groove to the shorter spline end").New(Around(half, 0.03m)).Service(Mm(half - 0.30m, half + 0.05m)).Thinnest(4).By("depth-micrometer").DrawingHolds().Functional(),
            Angle("drive-flank-angle", "Drive flank of the spline ends to the axis; back taper positive").New(Degrees(3, 4)).Service(Degrees(2, 4.5)).Averaged(3).Functional())
        .Shows(Attributes.SleeveForm, Attributes.Teeth)
        .LookFor(DamageClasses.Gear);

    private static PartKind Ring(string id) => Kind(id, "Selective snap ring of the hub " + id[10..]).Made(Materials.Steel).SingleUse()
        .Measures(Size("thickness", "Thickness, at 3 points").New(Mm(1.69m, 1.91m)).Averaged(3).By("outside-micrometer").Functional())
        .Shows(Attributes.Surface).LookFor("hand-ground", "dished");

    private static PartKind Washer(string id, decimal thickness) => Kind(id, "Selective thrust washer " + id[..id.IndexOf('-', StringComparison.Ordinal)]).Made(Materials.Steel)
        .Measures(Size("thickness", "Thickness, thinnest of 4").New(Around(thickness, 0.11m)).Service(Around(thickness, 0.20m)).Thinnest(4).By("outside-micrometer").Functional())
        .Shows(Attributes.WasherMaterial).LookFor("scuffing", "sliding-wear", "overheating");

    private static PartKind Key => Kind("shift-key", "Shift key").Made(Materials.Steel)
        .Measures(Size("width", "Width, thinnest").New(Mm(5.96m, 6.00m)).Service(Mm(5.88m, 6.00m)).Thinnest(3).By("outside-micrometer"))
        .LookFor("sliding-wear", "plastic-deformation");

    private static PartKind BlockerRing(string id, string name, params AttributeDefinition[] more) => Kind(id, name).Made(Materials.Steel)
        .Measures(
            Size("reserve-gap", "Gap to its gear, all cones pressed home, at 3 angles").New(Mm(1.00m, 1.40m)).Service(Mm(0.50m, 1.60m)).BothEnds(3).By("feeler-gauge").Functional(),
            Size("slot-width", "Width of the key slots, widest").New(Mm(8.50m, 8.56m)).Service(Mm(8.50m, 8.70m)).Widest(3).By("gauge-pins").Functional())
        .Shows(Attributes.Grip, Attributes.Teeth).Shows(more)
        .LookFor("glazing", "lining-loose", "cracked");

    private static PartKind PackMember(string id, string name) => Kind(id, name).Made(Materials.Steel)
        .Measures(Size("thickness", "Wall at the gauge plane, thinnest").New(Mm(1.78m, 1.82m)).Service(MmAtLeast(1.70m)).Thinnest(4).By("outside-micrometer"))
        .Shows(Attributes.Supplied).LookFor("glazing", "lining-loose", "cracked", "overheating");

    private static PartKind NeedleCage => Kind("needle-cage", "Caged needle bearing").Made(Materials.Steel)
        .Measures(Size("diameter", "Needle diameter, thinnest of 6").New(Mm(2.498m, 2.500m)).Service(Mm(2.494m, 2.500m)).Thinnest(6).By("outside-micrometer"))
        .LookFor(DamageClasses.Bearing).LookFor("cage-broken");

    private static PartKind Bearing(string id, string name) => Kind(id, name).Made(Materials.Steel)
        .Measures(
            Size("inboard-width", "Locating ring to the inner ring's gear side").New(Around(14.00m, 0.03m)).Service(Around(14.00m, 0.05m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
            Size("radial-clearance", "Radial internal clearance").New(Mm(0.006m, 0.020m)).Service(MmAtMost(0.045m)).Averaged(3).By("dial-indicator"))
        .Shows(Attributes.BearingType, Attributes.BearingFeel).LookFor(DamageClasses.Bearing);

    private static PartKind Rail => Kind("shift-rail", "Shift rail").Made(Materials.Steel)
        .Measures(
            Size("diameter", "Diameter, thinnest").New(Mm(15.866m, 15.884m)).Service(Mm(15.830m, 15.884m)).Thinnest(4).By("outside-micrometer"),
            Size("travel-front", "Neutral notch to the front notch").New(Mm(8.95m, 9.05m)).Service(Mm(8.85m, 9.10m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
            Size("travel-rear", "Neutral notch to the rear notch").New(Mm(8.95m, 9.05m)).Service(Mm(8.85m, 9.10m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
            Size("interlock-notch", "Depth of the interlock notch").New(Mm(1.95m, 2.05m)).Service(Mm(1.90m, 2.15m)).Averaged(2).By("depth-micrometer").SafetyCritical())
        .LookFor("burrs", "scuffing", "bent", "detent-notch-worn");

    private static PartKind Fork => Kind("shift-fork", "Shift fork").Made(Materials.Steel)
        .Measures(Size("pad-thickness", "Thickness of the thinner pad").New(Mm(7.60m, 7.65m)).Service(Mm(7.35m, 7.65m)).Thinnest(4).By("outside-micrometer"))
        .Shows(Attributes.InputPad, Attributes.OutputPad).LookFor("sliding-wear", "overheating", "bent", "cracked");

    private static PartKind Interlock => Kind("interlock-plunger", "Interlock plunger").Made(Materials.Steel)
        .Measures(Size("length", "Length").New(Mm(7.86m, 7.94m)).Service(Mm(7.75m, 8.00m)).Thinnest(3).By("outside-micrometer").SafetyCritical())
        .LookFor("sliding-wear", "plastic-deformation");

    private static PartKind Idler => Kind("reverse-idler", "Reverse idler").Made(Materials.Steel).Carries(GearTrain.Idler)
        .Measures(
            Size("bore", "Bush bore, in 3 planes").New(Mm(18.016m, 18.034m)).Service(Mm(18.016m, 18.080m)).Widest(3).By("bore-gauge"),
            Size("groove-width", "Fork groove, widest of 4").New(Mm(8.00m, 8.05m)).Service(Mm(8.00m, 8.20m)).Widest(4).By("gauge-blocks"))
        .LookFor(DamageClasses.Gear);

    private static PartKind IdlerShaft => Kind("idler-shaft", "Reverse idler shaft").Made(Materials.Steel)
        .Measures(Size("diameter", "Diameter, 2 planes at 2 angles").New(Mm(17.989m, 18.000m)).Service(Mm(17.960m, 18.000m)).Thinnest(4).By("outside-micrometer"))
        .LookFor(DamageClasses.Shaft);

    private static PartKind Detent => Kind("detent", "Detent ball and spring").Made(Materials.Steel)
        .Measures(Force("load", "Spring load at the fitted height").New(Newtons(52, 62)).Service(Newtons(46, 64)).Functional()).LookFor("flats", "set");

    private static Characteristic Seat(string id, string name, decimal length) =>
        Size(id, name).New(Around(length, 0.03m)).Service(Around(length, 0.06m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional();

    private static Limits Around(decimal middle, decimal half) => Mm(middle - half, middle + half);
}
