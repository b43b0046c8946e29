namespace Brackenmere4;

/// <summary>What is tightened to what, what is filled in, and what this family wants done before a gearbox goes on. Made up like every other number here.</summary>
internal static class Building
{
    public static ImmutableArray<Fastener> Fasteners =>
    [
        Tightened("retainer-bolts", "Bolts of the input bearing retainer", 4, NewtonMetres(20, 25), "input-retainer", "retainer-gasket")
            .OnTheThread("Sealer on the two lower ones: their holes open into the case.").InOrder("Crosswise, in two rounds."),
        Tightened("cover-bolts", "Bolts of the shift cover", 8, NewtonMetres(18, 22), "shift-cover")
            .OnTheThread("A drop of oil.").InOrder("From the middle outwards, in two rounds, in neutral."),
        Tightened("extension-bolts", "Bolts of the extension housing", 5, NewtonMetres(55, 65), "extension", "extension-gasket")
            .OnTheThread("Sealer on the lowest one.").InOrder("Crosswise, in two rounds.").SafetyCritical(),
        Tightened("drain-plug", "Drain and filler plugs", 2, NewtonMetres(30, 40), "case")
            .OnTheThread("Sealer, tapered thread: no more than this, the boss is iron and splits."),
    ];

    public static ImmutableArray<Lubricant> Lubricants =>
    [
        Filled("gearbox-oil", "Gearbox oil", "Viscosity grade 80W-90 by SAE J306, mild additives", Litres(1.7, 1.9), "To the lower edge of the filler hole, the gearbox level.", "oil")
            .ReadAt(Celsius(15, 30)).ForLinings("The rings are of yellow metal: sulfur-phosphorus extreme-pressure oil can corrode them hot, and friction modifiers make them clash."),
    ];

    public static ImmutableArray<FamilyGate> Gates =>
    [
        WantsRead("counter-end-play", GateStage.Assembly, "The countergear's end play is read as built", "It can't be got at any more once the mainshaft is in.").UnlessExcepted(),
        WantsSigned("tightened", GateStage.Assembly, "Everything on the tightening list is tightened and signed",
            "With a calibrated wrench by the tightening list, in its order; each is marked once it is done.", "A bolt that is forgotten here is found on the road."),
        WantsSigned("oil-held", GateStage.FinalTest, "It stood filled without a drop", "Filled to its level and turned, then an hour over clean paper: no drop.",
            "A leak is cheap to mend on the bench and dear in the car.").UnlessExcepted(),
    ];
}
