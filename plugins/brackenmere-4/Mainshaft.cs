namespace Brackenmere4;

/// <summary>The mainshaft itself and its rear bearing.</summary>
internal static class Mainshaft
{
    public static ImmutableArray<PartKind> Kinds =>
    [
        Kind("mainshaft", "Mainshaft").Made(Materials.Steel)
            .Measures(
                Size("third-seat", "Outer wall of the front ring groove to the flange").New(In(2.6690m, 2.6710m)).Service(In(2.6680m, 2.6720m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("flange-width", "Width of the flange between third and second gear").New(In(0.2490m, 0.2510m)).Service(In(0.2450m, 0.2510m)).Thinnest(4).By("outside-micrometer").DrawingHolds(),
                Size("second-seat", "Flange to the outer wall of the rear ring groove").New(In(2.6750m, 2.6770m)).Service(In(2.6740m, 2.6790m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("rear-seat", "Flange to the shoulder of the rear bearing").New(In(4.1040m, 4.1060m)).Service(In(4.1030m, 4.1080m)).Averaged(3).By("depth-micrometer").DrawingHolds().Functional(),
                Size("rear-groove", "Shoulder of the rear bearing to the outer wall of its ring groove").New(In(0.9925m, 0.9935m)).Service(In(0.9920m, 0.9950m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
                Size("nose", "Diameter of the nose under the pocket rollers").New(In(0.8742m, 0.8748m)).Service(In(0.8735m, 0.8748m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("third-journal", "Journal of third gear, 2 planes at 2 angles").New(In(1.8748m, 1.8752m)).Service(In(1.8735m, 1.8752m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("second-journal", "Journal of second gear, 2 planes at 2 angles").New(In(1.9373m, 1.9377m)).Service(In(1.9360m, 1.9377m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("first-journal", "Journal of first gear, 2 planes at 2 angles").New(In(1.7498m, 1.7502m)).Service(In(1.7485m, 1.7502m)).Thinnest(4).By("outside-micrometer").Functional(),
                Size("rear-bearing-seat", "Seat of the rear bearing").New(In(1.5748m, 1.5753m)).Service(In(1.5747m, 1.5754m)).Thinnest(4).By("outside-micrometer").DrawingHolds(),
                Size("case-depth", "Depth of the hardened layer").New(In(0.0300m, 0.0400m)).Averaged(1).By("hardness-tester").DrawingHolds(),
                Size("third-journal-layer", "Hardened layer left on the journal of third gear").Service(InAtLeast(0.0200m))
                    .Follows(Of("case-depth"), Of("third-journal", 1, 2), Constant(Inch(1.8750m), -1, 2)).Functional(),
                Size("runout", "Runout at the middle journal, between centres").New(In(0m, 0.0008m)).Service(InAtMost(0.0020m)).Spread(8).By("dial-indicator").Functional(),
                Hardness("surface-hardness", "Hardness of the journals").New(VickersAtLeast(680)).Service(VickersAtLeast(620)).Averaged(3))
            .Shows(Attributes.Vintage)
            .LookFor(DamageClasses.Shaft).LookFor("ring-groove-lip-rounded", "twisted"),
        Kind("rear-bearing", "Rear ball bearing").Made(Materials.Steel)
            .Measures(
                Size("width", "Width of the rings").New(In(0.8995m, 0.9005m)).Service(In(0.8990m, 0.9005m)).Averaged(4).By("outside-micrometer").DrawingHolds(),
                Size("inboard-width", "Locating ring to the inner ring's gear side").New(In(0.5990m, 0.6010m)).Service(In(0.5980m, 0.6020m)).Averaged(3).By("depth-micrometer").DrawingHolds(),
                Size("outside-diameter", "Outside diameter").New(In(3.1491m, 3.1496m)).Service(In(3.1489m, 3.1496m)).Thinnest(3).By("outside-micrometer").DrawingHolds(),
                Size("bore", "Bore").New(In(1.5743m, 1.5748m)).Service(In(1.5743m, 1.5750m)).Widest(3).By("bore-gauge").DrawingHolds(),
                Size("radial-clearance", "Radial internal clearance").New(In(0.0003m, 0.0010m)).Service(InAtMost(0.0020m)).Averaged(3).By("dial-indicator"))
            .Shows(Attributes.BearingType, Attributes.ClearanceGroup, Attributes.BearingFeel)
            .LookFor(DamageClasses.Bearing),
        Rings.Selective("snap-ring-rear", "Selective snap ring behind the rear bearing", In(0.0865m, 0.0955m)),
    ];

    public static ImmutableArray<Position> Places => Assembly("mainshaft",
        Place("snap-ring-rear", "Snap ring behind the rear bearing"),
        Place("rear-bearing", "Rear bearing"),
        Place("mainshaft", "Mainshaft"));
}
