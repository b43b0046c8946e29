namespace Brackenmere4;

/// <summary>The input end: retainer, its gasket, the input bearing, the input gear and the pocket rollers in its bore.</summary>
internal static class InputAssembly
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("input-retainer", "Input bearing retainer").Made(Materials.GreyIron)
            .Measures(
                Size("recess", "Depth of the bearing recess, at 4 points").New(In(0.2390m, 0.2410m)).Service(In(0.2380m, 0.2450m)).Averaged(4).By("depth-micrometer").DrawingHolds().Functional(),
                Size("face-warp", "Warp of the flange on a plate").New(In(0m, 0.0010m)).Service(InAtMost(0.0020m)).Spread(4).By("feeler-gauge"))
            .LookFor("cracked", "seal-groove", "abrasive-wear"),
        Rings.Gasket("retainer-gasket", "Gasket under the input bearing retainer"),
        Kind("input-seal", "Input shaft seal").SingleUse().LookFor("lip-worn"),
        Kind("input-bearing-ring", "Locating ring of the input bearing").Made(Materials.Steel).SingleUse()
            .Measures(Size("thickness", "Thickness, at 3 points").New(In(0.0970m, 0.0990m)).Service(In(0.0965m, 0.0990m)).Averaged(3).By("outside-micrometer"))
            .Shows(Attributes.Surface)
            .LookFor("hand-ground", "dished"),
        Kind("input-bearing", "Input ball bearing").Made(Materials.Steel)
            .Measures(
                Size("width", "Width of the rings").New(In(0.8115m, 0.8125m)).Service(In(0.8110m, 0.8125m)).Averaged(4).By("outside-micrometer").DrawingHolds(),
                Size("inboard-width", "Locating ring to the inner ring's gear side").New(In(0.5590m, 0.5610m)).Service(In(0.5580m, 0.5620m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
                Size("outside-diameter", "Outside diameter").New(In(2.8341m, 2.8346m)).Service(In(2.8339m, 2.8346m)).Thinnest(3).By("outside-micrometer").DrawingHolds(),
                Size("bore", "Bore").New(In(1.3775m, 1.3780m)).Service(In(1.3775m, 1.3782m)).Widest(3).By("bore-gauge").DrawingHolds(),
                Size("radial-clearance", "Radial internal clearance").New(In(0.0003m, 0.0009m)).Service(InAtMost(0.0020m)).Averaged(3).By("dial-indicator"))
            .Shows(Attributes.BearingType, Attributes.ClearanceGroup, Attributes.BearingFeel)
            .LookFor(DamageClasses.Bearing),
        Kind("input-gear", "Input gear").Made(Materials.Steel).Carries(GearTrain.Input)
            .Measures(
                Size("pilot-nose", "Pilot nose diameter, at 3 angles").New(In(0.6685m, 0.6690m)).Service(In(0.6665m, 0.6692m)).BothEnds(3).By("outside-micrometer").Functional(),
                Size("bearing-seat", "Bearing seat diameter").New(In(1.3780m, 1.3785m)).Service(In(1.3779m, 1.3787m)).Thinnest(4).By("outside-micrometer").DrawingHolds(),
                Size("pocket-bore", "Pocket bore, in 3 planes").New(In(1.2506m, 1.2514m)).Service(In(1.2506m, 1.2525m)).Widest(3).By("bore-gauge").Functional(),
                Size("dog-reach", "Bearing shoulder to the inner edge of the engagement teeth").New(In(1.0420m, 1.0440m)).Service(In(1.0380m, 1.0445m)).Averaged(3).By("depth-micrometer").Functional(),
                Size("runout", "Runout at the pilot nose").New(In(0m, 0.0008m)).Service(InAtMost(0.0012m)).Spread(8).By("dial-indicator"))
            .Measures(Engagement.Measured)
            .Shows(Engagement.Looked)
            .LookFor(DamageClasses.Gear),
        Kind("pocket-rollers", "Pocket rollers").Made(Materials.Steel)
            .Measures(
                Number("count", "How many rollers are there").New(Exactly(17)).Service(Exactly(17)).Functional(),
                Size("diameter", "Roller diameter, thinnest of 6").New(In(0.1874m, 0.1876m)).Service(In(0.1871m, 0.1876m)).Thinnest(6).By("outside-micrometer"))
            .LookFor(DamageClasses.Bearing),
    ];

    public static ImmutableArray<Position> Places => Assembly("input",
        Place("input-retainer", "Input bearing retainer"),
        Place("retainer-gasket", "Gasket under the input bearing retainer"),
        Place("input-seal", "Input shaft seal"),
        Place("input-bearing-ring", "Locating ring of the input bearing"),
        Place("input-bearing", "Input bearing"),
        Place("input-gear", "Input gear"),
        Place("pocket-rollers", "Pocket rollers between input gear and mainshaft"));
}
