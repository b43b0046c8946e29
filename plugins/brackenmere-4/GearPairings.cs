namespace Brackenmere4;

/// <summary>Running teeth: mates, centres, hands, ratio sets and vintage.</summary>
internal static class GearPairings
{
    public static IEnumerable<PairingRule> All =>
    [
        CommonPairings.Mates("constant-mesh-pair", "Input gear and countergear", "input-gear", "countergear/input"),
        CommonPairings.Mates("third-mesh-pair", "Third gear and countergear", "countergear/third", "third-gear"),
        CommonPairings.Mates("second-mesh-pair", "Second gear and countergear", "countergear/second", "second-gear"),
        CommonPairings.Mates("first-mesh-pair", "First gear and countergear", "countergear/first", "first-gear"),
        CommonPairings.Mates("reverse-counter-pair", "Countergear and reverse idler", "countergear/reverse", "reverse-idler"),
        CommonPairings.Mates("reverse-sleeve-pair", "Reverse idler and first and second sleeve", "reverse-idler", "sleeve-1-2"),
        Centres("constant-mesh-centres", "Input gear and countergear at the case's centres", "input-gear", "countergear/input", "centre-distance"),
        Centres("third-mesh-centres", "Third gear and countergear at the case's centres", "countergear/third", "third-gear", "centre-distance"),
        Centres("second-mesh-centres", "Second gear and countergear at the case's centres", "countergear/second", "second-gear", "centre-distance"),
        Centres("first-mesh-centres", "First gear and countergear at the case's centres", "countergear/first", "first-gear", "centre-distance"),
        Centres("reverse-counter-centres", "Countergear and reverse idler at the case's centres", "countergear/reverse", "reverse-idler", "counter-to-idler"),
        Centres("reverse-sleeve-centres", "Reverse idler and sleeve at the case's centres", "reverse-idler", "sleeve-1-2", "main-to-idler"),
        Pairing("third-hands", "Hands of third gear and its mate", "thrust-direction")
            .Role("first", "countergear/third").Role("second", "third-gear").Option("relation", "mates")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "Two gears of the same hand do not run on parallel shafts."),
        Pairing("countergear-hands", "Hands on the countergear", "thrust-direction")
            .Role("first", "countergear/input").Role("second", "countergear/third").Option("relation", "same-cluster")
            .Broken(Compatibility.Incompatible, Severity.Wear, "The thrusts add: a washer burns and the end play grows."),
        Pairing("ratio-set", "One ratio set throughout", "ratio-set")
            .Role("first", "input-gear").Role("second", "countergear").Role("third", "third-gear").Role("fourth", "second-gear").Role("fifth", "first-gear")
            .Broken(Compatibility.Incompatible, Severity.Malfunction, "Mixed ratio sets: one gear has the wrong ratio, or its teeth run at the wrong centres."),
        Pairing("vintage-3-4", "Vintage of third gear, hub and sleeve", "vintage-match")
            .Role("first", "third-gear").Role("second", "hub-3-4").Role("third", "sleeve-3-4").Role("fourth", "input-gear")
            .Broken(Compatibility.Conditional, Severity.Advisory,
                "Mixed vintage: keep gear, sleeve, fork travel and stop of one vintage together, or check the forms, depths and end play one by one."),
    ];

    private static PairingRule Centres(string id, string name, string driver, string driven, string distance) =>
        CommonPairings.Centres(id, name, driver, driven, new Address("case", distance), Inch(-0.0020m), Inch(0.0030m));
}
