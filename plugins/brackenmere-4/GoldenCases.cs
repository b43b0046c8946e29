namespace Brackenmere4;

/// <summary>Worked cases that the rules must reproduce.</summary>
internal static class GoldenCases
{
    private const string Id = "brackenmere-4";

    public static ImmutableArray<GoldenCase> All =>
    [
        ThirdEnd("Third gear with the middle ring has its end play", ring: 0.0930m).Expect("third-end-play", "conforming"),
        ThirdEnd("Third gear with a ring one size too thick is still inside", ring: 0.0960m).Expect("third-end-play", "conforming"),
        ThirdEnd("Third gear with the thickest ring is too tight", ring: 0.0990m).Expect("third-end-play", "nonconforming"),
        Case("Third gear drags with the thinnest ring and no ring is chosen", Id)
            .Found("mainshaft", "hub-3-4", "third-gear")
            .TriedTight("third-end-play", "snap-ring-3-4", "snap-ring-3-4", "087", Inch(0.087m), "mainshaft", "hub-3-4", "third-gear")
            .Expect("third-end-play", "not-assessed"),
        Engaged("A back-tapered gear in a straight sleeve", "back-tapered", "straight", "sound", "sound").Expect("third-engagement-form", "incompatible"),
        Engaged("A straight gear in a straight sleeve", "straight", "straight", "sound", "sound").Expect("third-engagement-form", "compatible"),
        Engaged("Leaned teeth in a straight sleeve", "straight", "straight", "leaned", "dark").Expect("third-engagement-form", "incompatible"),
        Engaged("Leaned teeth in a back-tapered sleeve, no stop", "straight", "back-tapered", "leaned", "dark").Expect("third-engagement-form", "conditional"),
        Case("A filling-slot bearing behind helical gears", Id).Found("rear-bearing").Shows("rear-bearing", "type", "filling-slot").Expect("rear-bearing-thrust", "incompatible"),
        Case("The longer keys in the third and fourth hub", Id)
            .FoundOf("keys-3-4", "shift-key").Found("hub-3-4").Shows("keys-3-4", "notch", "none").Expect("key-length-3-4", "incompatible"),
        Interlock("An interlock plunger that holds", 0.4400m).Expect("interlock-hold", "conforming"),
        Interlock("An interlock plunger too short", 0.4100m).Expect("interlock-hold", "nonconforming"),
    ];

    private static GoldenCase ThirdEnd(string name, decimal ring) => Case(name, Id)
        .Found("mainshaft", "hub-3-4", "third-gear")
        .Chosen("snap-ring-3-4", "snap-ring-3-4")
        .ReadsInches("mainshaft/third-seat", 2.6700m)
        .ReadsInches("hub-3-4/width", 1.0620m)
        .ReadsInches("third-gear/length", 1.5000m)
        .ReadsInches("snap-ring-3-4/thickness", ring);

    private static GoldenCase Engaged(string name, string gear, string sleeve, string drive, string coast) => Case(name, Id)
        .Found("third-gear", "sleeve-3-4")
        .Shows("third-gear", "dog.form", gear).Shows("third-gear", "dog.drive-flank", drive).Shows("third-gear", "dog.coast-flank", coast)
        .Shows("third-gear", "dog.stop", "none").Shows("sleeve-3-4", "form", sleeve);

    private static GoldenCase Interlock(string name, decimal plunger) => Case(name, Id)
        .Found("shift-cover", "interlock-plunger").FoundOf("rail-3-4", "shift-rail").FoundOf("rail-1-2", "shift-rail")
        .ReadsInches("interlock-plunger/length", plunger)
        .ReadsInches("shift-cover/rail-spacing", 1.0000m)
        .ReadsInches("rail-3-4/diameter", 0.6250m).ReadsInches("rail-1-2/diameter", 0.6250m);
}
