namespace Ostrand5;

/// <summary>Worked cases that the rules must reproduce.</summary>
internal static class GoldenCases
{
    private const string Id = "ostrand-5";

    public static ImmutableArray<GoldenCase> All =>
    [
        Preload("A pack of 1.60 preloads the output shaft by a tenth", 1.00m, 0.50m, 0.10m).Expect("output-preload", "conforming"),
        Preload("A pack of 1.50 leaves no preload", 1.00m, 0.25m, 0.25m).Expect("output-preload", "nonconforming"),
        Preload("A pack of 1.75 squeezes the bearings", 1.00m, 0.50m, 0.25m).Expect("output-preload", "nonconforming"),
        Case("A pack not chosen yet", Id).Found("main-case", "rear-case", "output-shaft").Expect("output-preload", "not-assessed"),
        Oiled("A lined ring in friction-modified oil", "friction-modified").Expect("third-ring-oil", "incompatible"),
        Oiled("A lined ring in the oil that its maker names", "mild").Shows("oil", "grade", "marsh-75").Expect("third-ring-oil", "compatible"),
        Cup("A cup tight in the aluminium", 61.965m).Expect("output-cup-fit", "conforming"),
        Cup("A cup that creeps when hot", 62.000m).Expect("output-cup-fit", "nonconforming"),
    ];

    private static GoldenCase Preload(string name, params decimal[] shims)
    {
        var read = Case(name, Id)
            .Found("main-case", "rear-case", "output-shaft").FoundOf("output-bearing-front", "output-bearing").FoundOf("output-bearing-rear", "output-bearing")
            .ReadsMillimetres("main-case/output-cup-depth", 175.000m).ReadsMillimetres("rear-case/output-cup-depth", 48.000m)
            .ReadsMillimetres("output-bearing-front/width", 19.000m).ReadsMillimetres("output-bearing-rear/width", 19.000m)
            .ReadsMillimetres("output-shaft/span", 183.500m);
        return shims.Select((s, i) => (Shim: s, Index: i + 1)).Aggregate(read, (g, s) => g
            .Chosen("output-shim", "output-shim", s.Index)
            .ReadsMillimetres("output-shim/thickness", s.Shim, 4, s.Index));
    }

    private static GoldenCase Oiled(string name, string additive) => Case(name, Id)
        .FoundOf("blocker-ring-3", "blocker-ring").Chosen("oil", "oil").Shows("blocker-ring-3", "lining", "carbon").Shows("oil", "additive", additive);

    private static GoldenCase Cup(string name, decimal bore) => Case(name, Id)
        .Found("main-case").FoundOf("output-bearing-front", "output-bearing")
        .ReadsMillimetres("main-case/output-cup-bore", bore, 9).ReadsMillimetres("output-bearing-front/outside-diameter", 62.008m);
}
