namespace Kestermere6;

/// <summary>Worked cases that the rules must reproduce.</summary>
internal static class GoldenCases
{
    private const string Id = "kestermere-6";

    public static ImmutableArray<GoldenCase> All =>
    [
        Stopped("A back-tapered sleeve with its stop", "present").Expect("third-stop", "compatible"),
        Stopped("A back-tapered sleeve whose stop was ground off", "none").Expect("third-stop", "incompatible"),
        EndPlay("Third gear with the middle ring", 1.80m).Expect("third-end-play", "conforming"),
        EndPlay("Third gear with a ring too thick", 1.95m).Expect("third-end-play", "nonconforming"),
        EndPlay("Third gear with a ring too thin", 1.60m).Expect("third-end-play", "nonconforming"),
        Interlock("An interlock plunger that holds", 7.90m).Expect("interlock-hold", "conforming"),
        Interlock("An interlock plunger too short", 7.20m).Expect("interlock-hold", "nonconforming"),
        Interlock("An interlock plunger too long", 8.80m).Expect("interlock-hold", "nonconforming"),
        IdlerOnShaft("The reverse idler on a sound shaft", 17.995m).Expect("idler-clearance", "conforming"),
        IdlerOnShaft("The reverse idler on a worn shaft", 17.900m).Expect("idler-clearance", "nonconforming"),
        Depth("Third in at its depth", 9.00m).Expect("third-engagement", "conforming").Expect("third-stop-room", "conforming"),
        Depth("Third not fully in: the rail stops short", 8.00m).Expect("third-engagement", "nonconforming"),
        Depth("Third too far in: the sleeve stands on its stop", 9.80m).Expect("third-engagement", "nonconforming").Expect("third-stop-room", "nonconforming"),
        Case("A filling-slot bearing behind helical gears", Id).Found("rear-bearing").Shows("rear-bearing", "type", "filling-slot").Expect("rear-bearing-thrust", "incompatible"),
        Case("A ring that someone ground to fit", Id).Found("snap-ring-3-4").Shows("snap-ring-3-4", "surface", "ground").Expect("snap-ring-3-4-as-made", "incompatible"),
        Case("A ring as it was made", Id).Found("snap-ring-3-4").Shows("snap-ring-3-4", "surface", "as-made").Expect("snap-ring-3-4-as-made", "compatible"),
        Cones("Three cones from one unit", "outer-ring-second", "middle-cone-second", "inner-ring-second").Expect("cones-second", "compatible"),
        Cones("One cone of three exchanged", "outer-ring-second", "middle-cone-second").Chosen("inner-ring-second", "inner-ring").Expect("cones-second", "incompatible"),
    ];

    private static GoldenCase Stopped(string name, string stop) => Case(name, Id)
        .Found("third-gear", "sleeve-3-4").Shows("sleeve-3-4", "form", "back-tapered").Shows("third-gear", "dog.stop", stop);

    private static GoldenCase EndPlay(string name, decimal ring) => Case(name, Id).OnRing(ring);

    private static GoldenCase OnRing(this GoldenCase parts, decimal ring) => parts
        .Found("mainshaft", "hub-3-4", "third-gear").Chosen("snap-ring-3-4", "snap-ring-3-4")
        .ReadsMillimetres("mainshaft/third-seat", 60.00m).ReadsMillimetres("third-gear/length", 30.00m)
        .ReadsMillimetres("hub-3-4/width", 28.00m).ReadsMillimetres("snap-ring-3-4/thickness", ring);

    private static GoldenCase Interlock(string name, decimal plunger) => Case(name, Id)
        .Found("case", "interlock-plunger").FoundOf("rail-1-2", "shift-rail").FoundOf("rail-3-4", "shift-rail")
        .ReadsMillimetres("interlock-plunger/length", plunger).ReadsMillimetres("case/rail-spacing", 22.00m)
        .ReadsMillimetres("rail-1-2/diameter", 15.875m).ReadsMillimetres("rail-3-4/diameter", 15.875m);

    private static GoldenCase IdlerOnShaft(string name, decimal shaft) => Case(name, Id).Found("reverse-idler", "idler-shaft")
        .ReadsMillimetres("reverse-idler/bore", 18.025m).ReadsMillimetres("idler-shaft/diameter", shaft);

    private static GoldenCase Depth(string name, decimal travel) => Case(name, Id)
        .FoundOf("rail-3-4", "shift-rail").FoundOf("fork-3-4", "shift-fork").Found("sleeve-3-4").OnRing(1.80m)
        .ReadsMillimetres("rail-3-4/travel-front", travel).ReadsMillimetres("sleeve-3-4/half-length", 15.00m).ReadsMillimetres("sleeve-3-4/groove-width", 8.02m)
        .ReadsMillimetres("fork-3-4/pad-thickness", 7.62m).ReadsMillimetres("hub-3-4/front-offset", 14.00m).ReadsMillimetres("third-gear/dog-setback", 6.50m)
        .ReadsMillimetres("third-gear/stop-depth", 4.00m);

    private static GoldenCase Cones(string name, params string[] positions) =>
        positions.Aggregate(Case(name, Id), (g, p) => g.FoundOf(p, p[..p.LastIndexOf('-')]));
}
