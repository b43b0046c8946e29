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
        Cones("Three cones from one unit", "outer-ring-second", "middle-cone-second", "inner-ring-second").Expect("cones-second", "compatible"),
        Cones("One cone of three exchanged", "outer-ring-second", "middle-cone-second").Chosen("inner-ring-second", "inner-ring").Expect("cones-second", "incompatible"),
    ];

    private static GoldenCase Stopped(string name, string stop) => Case(name, Id)
        .Found("third-gear", "sleeve-3-4").Shows("sleeve-3-4", "form", "back-tapered").Shows("third-gear", "dog.stop", stop);

    private static GoldenCase EndPlay(string name, decimal ring) => Case(name, Id)
        .Found("mainshaft", "hub-3-4", "third-gear").Chosen("snap-ring-3-4", "snap-ring-3-4")
        .ReadsMillimetres("mainshaft/third-seat", 60.00m).ReadsMillimetres("third-gear/length", 30.00m)
        .ReadsMillimetres("hub-3-4/width", 28.00m).ReadsMillimetres("snap-ring-3-4/thickness", ring);

    private static GoldenCase Cones(string name, params string[] positions) =>
        positions.Aggregate(Case(name, Id), (g, p) => g.FoundOf(p, p[..p.LastIndexOf('-')]));
}
