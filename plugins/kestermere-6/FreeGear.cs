namespace Kestermere6;

/// <summary>One gear that runs free on the mainshaft, with what engages it.</summary>
/// <param name="Name">The gear: <c>third</c>.</param>
/// <param name="Pair">The hub that serves it: <c>3-4</c>.</param>
/// <param name="Teeth">Its running teeth.</param>
/// <param name="Length">Thrust face to thrust face, nominal, mm.</param>
/// <param name="Setback">Thrust face to the edge of the engagement teeth, nominal, mm.</param>
/// <param name="Cones">How many cones brake it.</param>
internal sealed record FreeGear(string Name, string Pair, ToothSet Teeth, decimal Length, decimal Setback, int Cones)
{
    public string Position => Name + "-gear";

    public string Ring => Cones == 1 ? $"blocker-ring-{Name}" : $"outer-ring-{Name}";

    public string Sleeve => "sleeve-" + Pair;

    public string Hub => "hub-" + Pair;

    public string Keys => "keys-" + Pair;

    /// <summary>The three hubs, by the gears that they serve.</summary>
    public static ImmutableArray<string> Pairs { get; } = ["1-2", "3-4", "5-6"];

    public static ImmutableArray<FreeGear> All =>
    [
        new("first", "1-2", GearTrain.First, 34.00m, 6.00m, 3),
        new("second", "1-2", GearTrain.Second, 31.00m, 6.00m, 3),
        new("third", "3-4", GearTrain.Third, 30.00m, 6.50m, 1),
        new("fifth", "5-6", GearTrain.Fifth, 27.00m, 6.00m, 1),
        new("sixth", "5-6", GearTrain.Sixth, 26.00m, 6.00m, 1),
    ];
}
