namespace Ostrand5;

/// <summary>What is tightened to what, what is filled in, and what this family wants done before a gearbox goes on. Made up like every other number here.</summary>
internal static class Building
{
    public static ImmutableArray<Fastener> Fasteners =>
    [
        Tightened("case-bolts", "Bolts between main and rear case", 11, NewtonMetres(22, 26), "main-case", "rear-case")
            .OnTheThread("Clean and dry.").Renewed("New ones each time: they are stretched.").InOrder("From the bearings outwards, in two rounds; then the angle.").ThenTurned(Degrees(40, 50)),
        Tightened("detent-plugs", "Plugs over the detents", 3, NewtonMetres(14, 18), "detents").OnTheThread("Thread locker of middle strength.").SafetyCritical(),
        Tightened("idler-bolt", "Bolt of the reverse idler shaft", 1, NewtonMetres(28, 34), "idler-shaft").OnTheThread("Thread locker of middle strength.").Renewed("A new washer each time."),
        Tightened("drain-plug", "Drain and filler plugs", 2, NewtonMetres(24, 30), "main-case").Renewed("A new sealing ring each time."),
    ];

    public static ImmutableArray<Lubricant> Lubricants =>
    [
        Filled("gearbox-oil", "Gearbox oil", "Viscosity grade 75W by SAE J306, of a grade that suits lined rings", Litres(1.9, 2.1), "To the lower edge of the filler hole, the gearbox level.", "oil")
            .ReadAt(Celsius(15, 35)).ForLinings("The rings are lined: no friction modifier and no additive of the owner's, or they slip and clash."),
    ];

    public static ImmutableArray<FamilyGate> Gates =>
    [
        WantsTried("oil-asked", GateStage.PreStrip, "It is asked what oil was in it", "Once it is drained nobody can tell whether the linings were spoilt by the oil.").UnlessExcepted(),
        WantsRead("input-float", GateStage.Assembly, "The float of the input shaft is read as built", "Computed shims are a start; only the reading on the assembly counts for tapered bearings."),
        WantsRead("output-preload", GateStage.Assembly, "The preload of the output shaft is read as built", "Computed shims are a start; only the reading on the assembly counts for tapered bearings."),
        WantsSigned("tightened", GateStage.Assembly, "Everything on the tightening list is tightened and signed",
            "With a calibrated wrench by the tightening list, in its order; each is marked once it is done.", "Bearing preload and case faces hang on it."),
    ];
}
