namespace Brackenmere4;

/// <summary>Iron case and extension.</summary>
internal static class Housing
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("case", "Case").Made(Materials.GreyIron)
            .Measures(
                Size("length", "Front bearing face to rear bearing face").New(In(9.3980m, 9.4020m)).Service(In(9.3970m, 9.4030m)).Averaged(4).By("depth-micrometer").DrawingHolds().Functional(),
                Size("counter-span", "Between the faces of the countershaft bosses").New(In(7.4980m, 7.5020m)).Service(In(7.4970m, 7.5060m)).Averaged(3).By("inside-micrometer").DrawingHolds().Functional(),
                Size("input-bore", "Bore of the input bearing, in 3 planes").New(In(2.8346m, 2.8355m)).Service(In(2.8346m, 2.8375m)).Widest(9).By("bore-gauge").Functional(),
                Size("rear-bore", "Bore of the rear bearing, in 3 planes").New(In(3.1496m, 3.1505m)).Service(In(3.1496m, 3.1525m)).Widest(9).By("bore-gauge").Functional(),
                Size("centre-distance", "Axis of the mainshaft to axis of the countershaft").New(In(3.2490m, 3.2510m)).Service(In(3.2480m, 3.2530m)).Averaged(2).By("caliper").DrawingHolds().Functional(),
                Size("counter-to-idler", "Axis of the countershaft to axis of the idler").New(In(1.8990m, 1.9010m)).Service(In(1.8980m, 1.9030m)).Averaged(2).By("caliper").DrawingHolds(),
                Size("main-to-idler", "Axis of the mainshaft to axis of the idler").New(In(3.0990m, 3.1010m)).Service(In(3.0980m, 3.1030m)).Averaged(2).By("caliper").DrawingHolds())
            .Shows(Attributes.Vintage)
            .LookFor("cracked", "fretting-corrosion", "scuffing", "thread-pulled"),
        Kind("extension", "Extension housing").Made(Materials.GreyIron)
            .Measures(
                Size("recess", "Depth of the bearing recess, at 4 points").New(In(0.2870m, 0.2890m)).Service(In(0.2860m, 0.2930m)).Averaged(4).By("depth-micrometer").DrawingHolds(),
                Size("bush-bore", "Bore of the rear bush, in 3 planes").New(In(1.5020m, 1.5040m)).Service(In(1.5020m, 1.5080m)).Widest(3).By("bore-gauge"),
                Size("face-warp", "Warp of the front face on a plate").New(In(0m, 0.0010m)).Service(InAtMost(0.0020m)).Spread(4).By("feeler-gauge"))
            .LookFor("cracked", "scuffing"),
        Kind("extension-seal", "Extension seal").SingleUse().LookFor("lip-worn"),
        Rings.Gasket("extension-gasket", "Gasket of the extension"),
        Kind("oil", "Oil").SingleUse().Shows(Attributes.Additive),
    ];

    public static ImmutableArray<Position> Rear => Assembly("housing",
        Place("extension-seal", "Extension seal"),
        Place("extension", "Extension housing"),
        Place("extension-gasket", "Gasket of the extension"));

    public static ImmutableArray<Position> Case => Assembly("housing",
        Place("case", "Case"),
        Place("oil", "Oil to be filled"));
}
