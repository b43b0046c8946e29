namespace Kestermere6;

/// <summary>
/// Teeth and meshes. Normal module 2.75 mm; mainshaft and countershaft stand 88.000 mm apart, so that cos β = (z1 + z2) / 64 closes each mesh within 1 µm.
/// Fourth is direct. Reverse runs on spur teeth over a sliding idler: 15 to 18 to 40 teeth on the first and second sleeve, at a = m (z1 + z2) / 2.
/// </summary>
internal static class GearTrain
{
    public static readonly ToothSet Input = Row("", 27, 25.0078, Hand.Left);
    public static readonly ToothSet CounterInput = Row("input", 31, 25.0078, Hand.Right);
    public static readonly ToothSet First = Row("", 43, 25.0078, Hand.Left, -0.20);
    public static readonly ToothSet CounterFirst = Row("first", 15, 25.0078, Hand.Right, 0.20);
    public static readonly ToothSet Second = Row("", 37, 22.7982, Hand.Left);
    public static readonly ToothSet CounterSecond = Row("second", 22, 22.7982, Hand.Right);
    public static readonly ToothSet Third = Row("", 30, 27.0481, Hand.Left);
    public static readonly ToothSet CounterThird = Row("third", 27, 27.0481, Hand.Right);
    public static readonly ToothSet Fifth = Row("", 25, 22.7982, Hand.Left);
    public static readonly ToothSet CounterFifth = Row("fifth", 34, 22.7982, Hand.Right);
    public static readonly ToothSet Sixth = Row("", 22, 22.7982, Hand.Left);
    public static readonly ToothSet CounterSixth = Row("sixth", 37, 22.7982, Hand.Right);

    public static readonly ToothSet CounterReverse = Row("reverse", 15, 0, Hand.Spur);
    public static readonly ToothSet Idler = Row("", 18, 0, Hand.Spur);
    public static readonly ToothSet SleeveReverse = Row("", 40, 0, Hand.Spur);

    /// <summary>Ratios follow: first 3.29, second 1.93, third 1.28, fourth 1.00 (direct), fifth 0.84, sixth 0.68, reverse 3.06.</summary>
    public static ImmutableArray<GearMesh> Meshes =>
    [
        Mesh("constant-mesh", "input-gear", "countergear/input", "first", "second", "third", "fifth", "sixth", "reverse"),
        Mesh("first-mesh", "countergear/first", "first-gear", "first"),
        Mesh("second-mesh", "countergear/second", "second-gear", "second"),
        Mesh("third-mesh", "countergear/third", "third-gear", "third"),
        Mesh("fifth-mesh", "countergear/fifth", "fifth-gear", "fifth"),
        Mesh("sixth-mesh", "countergear/sixth", "sixth-gear", "sixth"),
        new("reverse-idler-mesh", "countergear/reverse", "reverse-idler", new Address("case", "counter-to-idler"), ["reverse"]),
        new("reverse-sleeve-mesh", "reverse-idler", "sleeve-1-2", new Address("case", "main-to-idler"), ["reverse"]),
    ];

    private static ToothSet Row(string id, int teeth, double helix, Hand hand, double shift = 0) =>
        new(id, teeth, Millimetre(2.75m), Radians(helix), hand, Radians(20), shift, Demo);

    private static GearMesh Mesh(string id, string driver, string driven, params string[] gears) =>
        new(id, driver, driven, new Address("case", "centre-distance"), [.. gears]);
}
