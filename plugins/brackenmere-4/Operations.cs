namespace Brackenmere4;

/// <summary>
/// The work this family permits. Running tooth flanks and roots, cones and threads are never cut. Each cut names its face, its limit and what must be
/// read again before the part goes on.
/// </summary>
internal static class Operations
{
    private const string Eyes = "Wear eye protection; rings and springs fly.";
    private const string Magnet = "Take the magnetism and the dust off after grinding.";
    private const string Trial = "Cut less than asked, try, read again: the amount is a lower bound, not a promise.";
    private const string Press = "Press behind a shield and on the ring that is tight, never through the balls.";
    private const string Hot = "Hot parts burn: gloves, and an oven rather than a flame.";

    public static ImmutableArray<Operation> All => [.. Cuts, .. Dressing, .. Bench];

    private static Operation[] Cuts =>
    [
        Work("face-hub-3-4-rear", "Face the third gear side of the hub", "hub-3-4", 35)
            .Cuts("width", Inch(0.0250m), Inch(0.0005m), "rear face, square to the bore", InAtLeast(1.0450m))
            .Careful(Trial, Magnet).ThenMeasure("width", "width-spread"),
        Work("face-hub-3-4-front", "Face the ring side of the hub", "hub-3-4", 35)
            .Cuts("width", Inch(0.0100m), Inch(0.0005m), "front face, square to the bore", InAtLeast(1.0450m))
            .Cuts("front-offset", Inch(0.0100m), Inch(0.0005m), "front face, square to the bore", InAtLeast(0.5150m))
            .Careful(Trial, "This moves the sleeve toward the input: both engagement depths change.", Magnet).ThenMeasure("width", "width-spread", "front-offset"),
        Work("face-hub-1-2-front", "Face the second gear side of the hub", "hub-1-2", 35)
            .Cuts("width", Inch(0.0120m), Inch(0.0005m), "front face, square to the bore", InAtLeast(1.1100m))
            .Cuts("front-offset", Inch(0.0120m), Inch(0.0005m), "front face, square to the bore", InAtLeast(0.5500m))
            .Careful(Trial, Magnet).ThenMeasure("width", "width-spread", "front-offset"),
        Work("grind-third-gear-face", "Grind the rear thrust face of third gear", "third-gear", 40)
            .Cuts("length", Inch(0.0060m), Inch(0.0005m), "rear thrust face, square to the bore", InAtLeast(1.4900m), 0.2)
            .Careful("The face is hardened: keep it cool and check for burning after.", Magnet).ThenMeasure("length"),
        Work("spot-face-case", "Spot-face a countershaft boss of the case", "case", 60)
            .Adds("counter-span", Inch(0.0040m), Inch(0.0010m), "worn boss, square to the countershaft bore", InAtMost(7.5060m)).Mends("scuffing")
            .Careful("Support the case; iron dust is bad for lungs.").ThenMeasure("counter-span"),
    ];

    private static Operation[] Dressing =>
    [
        Work("dress-rail", "Dress the burrs off a rail", "shift-rail", 8).Mends("burrs").Careful("Leave the notch edges sharp.").ThenMeasure("diameter"),
        Work("dress-mainshaft", "Dress burrs off the mainshaft splines", "mainshaft", 12).Mends("burrs").Careful(Eyes),
        Work("dress-third-gear", "Blend burrs off third gear", "third-gear", 10).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("dress-second-gear", "Blend burrs off second gear", "second-gear", 10).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("dress-first-gear", "Blend burrs off first gear", "first-gear", 10).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("dress-countergear", "Blend burrs off the countergear", "countergear", 15).Mends("burrs").Careful("Burrs only: no metal off a running flank."),
        Work("dress-idler", "Round the tooth ends of the reverse idler", "reverse-idler", 12).Mends("burrs").Careful(Eyes),
        Work("dress-input-nose", "Turn the hammered edge off the pilot nose", "input-gear", 20)
            .Cuts("pilot-nose", Inch(0.0020m), Inch(0.0005m), "pilot nose, between centres", In(0.6675m, 0.6692m)).Mends("plastic-deformation")
            .Careful("The edge only: a nose turned small will not run in its bearing.").ThenMeasure("pilot-nose", "runout"),
        Work("flat-retainer", "Flat the retainer flange on a plate", "input-retainer", 15)
            .Cuts("recess", Inch(0.0020m), Inch(0.0005m), "flange face", InAtLeast(0.2380m)).ThenMeasure("recess", "face-warp"),
    ];

    private static Operation[] Bench =>
    [
        Work("strip", "Strip, wash and lay out", "case", 150)
            .Careful("Springs and detent balls fly out: cover them.", "Clutch dust may hold asbestos: wet it, never blow it.", "Solvent burns and harms skin: gloves, no flame, fresh air.",
                "Never spin a dry bearing with air."),
        Work("renew-extension-bush", "Press in and ream a new extension bush", "extension", 40).Mends("scuffing").Careful(Press).ThenMeasure("bush-bore"),
        Work("press-input-bearing", "Press the input bearing on", "input-bearing", 12).Careful(Press, Hot),
        Work("press-rear-bearing", "Press the rear bearing on", "rear-bearing", 15).Careful(Press, Hot),
        Work("assemble", "Assemble, set and test", "case", 240)
            .Careful("Move one rail: every other must be locked. A named person signs for it.", "Turn by hand through all gears before it is filled.",
                "Fasteners that the maker calls single-use are new, and torqued to the maker's figure."),
    ];
}
