namespace Kestermere6;

/// <summary>What is tightened to what, what is filled in, and what this family wants done before a gearbox goes on. Made up like every other number here.</summary>
internal static class Building
{
    public static ImmutableArray<Fastener> Fasteners =>
    [
        Tightened("bearing-plate-bolts", "Bolts that hold the rear bearing", 4, NewtonMetres(24, 28), "rear-bearing").OnTheThread("Thread locker of middle strength.").InOrder("Crosswise.").SafetyCritical(),
        Tightened("detent-plugs", "Plugs over the detents", 3, NewtonMetres(16, 20), "detents").OnTheThread("Thread locker of middle strength.").SafetyCritical(),
        Tightened("idler-bolt", "Bolt of the reverse idler shaft", 1, NewtonMetres(30, 36), "idler-shaft").Renewed("A new one each time."),
        Tightened("drain-plug", "Drain and filler plugs", 2, NewtonMetres(28, 34), "case").Renewed("A new sealing ring each time."),
    ];

    public static ImmutableArray<Lubricant> Lubricants =>
    [
        Filled("gearbox-oil", "Gearbox oil", "Viscosity grade 75W-80 by SAE J306, of a grade that suits lined rings", Litres(2.5, 2.7), "To the lower edge of the filler hole, the gearbox level.", "oil")
            .ReadAt(Celsius(35, 45)).ForLinings("Rings and cones are lined: no friction modifier and no additive of the owner's, or they slip and clash."),
    ];

    public static ImmutableArray<FamilyGate> Gates =>
    [
        WantsRead("counter-end-play", GateStage.Assembly, "The countergear's end play is read as built", "It can't be got at any more once the mainshaft is in."),
        WantsSigned("tightened", GateStage.Assembly, "Everything on the tightening list is tightened and signed",
            "With a calibrated wrench by the tightening list, in its order; each is marked once it is done.", "A bolt that is forgotten here is found on the road.").UnlessExcepted(),
        WantsSigned("third-rail-locked", GateStage.FinalTest, "The rail of fifth and sixth is locked while another is moved",
            "With the rail of first and second, then that of third and fourth, in gear: the rail of fifth and sixth must not move.",
            "The plunger stands between the first two rails only: the third is held by the gate plate, which no dimension here speaks of.").SafetyCritical(),
    ];
}
