namespace Ostrand5;

/// <summary>
/// Teeth and meshes. Normal module 2.5 mm, two shafts 77.500 mm apart. Third has a profile shift in its sum, so that it closes by the working pressure
/// angle; the others close by the helix alone; all within 1 µm.
/// </summary>
internal static class GearTrain
{
    public static readonly ToothSet InputFirst = Row("first", 13, 25.4146, Hand.Right, 0.30);
    public static readonly ToothSet First = Row("", 43, 25.4146, Hand.Left, -0.30);
    public static readonly ToothSet InputSecond = Row("second", 20, 23.1681, Hand.Right);
    public static readonly ToothSet Second = Row("", 37, 23.1681, Hand.Left);
    public static readonly ToothSet Third = Row("", 25, 24.0000, Hand.Right, 0.20);
    public static readonly ToothSet OutputThird = Row("third", 31, 24.0000, Hand.Left, 0.16236);
    public static readonly ToothSet Fourth = Row("", 29, 23.1681, Hand.Right);
    public static readonly ToothSet OutputFourth = Row("fourth", 28, 23.1681, Hand.Left);
    public static readonly ToothSet Fifth = Row("", 32, 25.4146, Hand.Right);
    public static readonly ToothSet OutputFifth = Row("fifth", 24, 25.4146, Hand.Left);
    public static readonly ToothSet InputReverse = Row("reverse", 13, 0, Hand.Spur);
    public static readonly ToothSet Idler = Row("", 23, 0, Hand.Spur);
    public static readonly ToothSet SleeveReverse = Row("", 41, 0, Hand.Spur);

    /// <summary>Ratios follow: first 3.31, second 1.85, third 1.24, fourth 0.97, fifth 0.75, reverse 3.15.</summary>
    public static ImmutableArray<GearMesh> Meshes =>
    [
        Mesh("first-mesh", "input-shaft/first", "first-gear", "main-case/centre-distance", "first"),
        Mesh("second-mesh", "input-shaft/second", "second-gear", "main-case/centre-distance", "second"),
        Mesh("third-mesh", "third-gear", "output-shaft/third", "main-case/centre-distance", "third"),
        Mesh("fourth-mesh", "fourth-gear", "output-shaft/fourth", "main-case/centre-distance", "fourth"),
        Mesh("fifth-mesh", "fifth-gear", "output-shaft/fifth", "main-case/centre-distance", "fifth"),
        Mesh("reverse-idler-mesh", "input-shaft/reverse", "reverse-idler", "main-case/input-to-idler", "reverse"),
        Mesh("reverse-sleeve-mesh", "reverse-idler", "sleeve-1-2", "main-case/output-to-idler", "reverse"),
    ];

    private static ToothSet Row(string id, int teeth, double helix, Hand hand, double shift = 0) =>
        new(id, teeth, Millimetre(2.5m), Radians(helix), hand, Radians(20), shift, Demo);

    private static GearMesh Mesh(string id, string driver, string driven, string centreDistance, string gear) =>
        new(id, driver, driven, Address.TryParse(centreDistance)!, [gear]);
}
