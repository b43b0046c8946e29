namespace Brackenmere4;

/// <summary>
/// Teeth and meshes. Normal diametral pitch 10 (normal module 2.54 mm); every mesh between mainshaft and countergear runs at the case's 3.2500 in
/// without profile shift in the sum: a = mn (z1 + z2) / (2 cos β), so that 59 teeth want β = 24.8116° and 60 want 22.6199°; both close within 1 µm.
/// The countergear is right hand throughout, so that its driven and its driving teeth push against each other.
/// </summary>
internal static class GearTrain
{
    public static readonly ToothSet Input = Left("", 25, 24.8116);
    public static readonly ToothSet CounterInput = Right("input", 34, 24.8116);
    public static readonly ToothSet Third = Left("", 30, 24.8116);
    public static readonly ToothSet CounterThird = Right("third", 29, 24.8116);
    public static readonly ToothSet Second = Left("", 36, 22.6199);
    public static readonly ToothSet CounterSecond = Right("second", 24, 22.6199);
    public static readonly ToothSet First = Left("", 41, 24.8116, shift: -0.15);
    public static readonly ToothSet CounterFirst = Right("first", 18, 24.8116, shift: 0.15);
    public static readonly ToothSet CounterReverse = Spur("reverse", 18);
    public static readonly ToothSet Idler = Spur("", 20);
    public static readonly ToothSet SleeveReverse = Spur("", 42);

    /// <summary>Ratios follow: first 3.10, second 2.04, third 1.41, fourth 1.00 (direct), reverse 3.17.</summary>
    public static ImmutableArray<GearMesh> Meshes =>
    [
        Mesh("constant-mesh", "input-gear", "countergear/input", "case/centre-distance", "first", "second", "third", "reverse"),
        Mesh("third-mesh", "countergear/third", "third-gear", "case/centre-distance", "third"),
        Mesh("second-mesh", "countergear/second", "second-gear", "case/centre-distance", "second"),
        Mesh("first-mesh", "countergear/first", "first-gear", "case/centre-distance", "first"),
        Mesh("reverse-idler-mesh", "countergear/reverse", "reverse-idler", "case/counter-to-idler", "reverse"),
        Mesh("reverse-sleeve-mesh", "reverse-idler", "sleeve-1-2", "case/main-to-idler", "reverse"),
    ];

    private static ToothSet Left(string id, int teeth, double helix, double shift = 0) => Teeth(id, teeth, helix, Hand.Left, shift);

    private static ToothSet Right(string id, int teeth, double helix, double shift = 0) => Teeth(id, teeth, helix, Hand.Right, shift);

    private static ToothSet Spur(string id, int teeth) => Teeth(id, teeth, 0, Hand.Spur, 0);

    private static ToothSet Teeth(string id, int teeth, double helix, Hand hand, double shift) =>
        new(id, teeth, Inch(0.1m), Radians(helix), hand, Radians(20), shift, Demo);

    private static GearMesh Mesh(string id, string driver, string driven, string centreDistance, params string[] gears) =>
        new(id, driver, driven, Address.TryParse(centreDistance)!, [.. gears]);
}
