namespace Brackenmere4;

/// <summary>What every gear with engagement teeth and a cone is measured and looked at for.</summary>
internal static class Engagement
{
    // Teeth that lean past six degrees have no metal left to work with. Up to there the part alone does not decide: its pairing with the sleeve does.
    public static Characteristic[] Measured =>
    [
        Size("dog.length", "Length of the engagement teeth, shortest of 6").New(In(0.1680m, 0.1720m)).Service(InAtLeast(0.1450m)).Thinnest(6).By("caliper").Functional(),
        Angle("dog.drive-flank-angle", "Drive flank of the engagement teeth to the axis; back taper positive").Service(Degrees(-6, 5)).Averaged(3).Functional(),
        Angle("dog.coast-flank-angle", "Coast flank of the engagement teeth to the axis; back taper positive").Service(Degrees(-6, 5)).Averaged(3).Functional(),
        Angle("cone.half-angle", "Half angle of the cone").New(Degrees(6.9, 7.1)).Service(Degrees(6.8, 7.2)),
        Size("cone.diameter", "Cone diameter at the gauge plane").New(In(2.5180m, 2.5200m)).Service(In(2.5150m, 2.5205m)).Thinnest(3).By("outside-micrometer"),
    ];

    public static AttributeDefinition[] Looked =>
    [
        Attributes.DogForm, Attributes.DriveFlank, Attributes.CoastFlank, Attributes.DogStop, Attributes.DogTeeth, Attributes.Vintage, Attributes.RatioSet,
    ];
}
