namespace Brackenmere4;

/// <summary>
/// An invented four-speed: iron case, three shafts, helical gears, ball bearings, end play set by snap rings, engagement teeth of mixed vintage and no
/// travel stops. Drawn in inches. All of it is data; there is no rule in code.
/// </summary>
public sealed class BrackenmerePlugin : IFamilyPlugin
{
    public PluginManifest Manifest { get; } = new("brackenmere-4", "1.0.0", "Saltmarsh Lane Gearboxes");

    public ImmutableArray<Family> Declare() => [Family.Proven(Inch(0.0001m), RuleCases.Sound(("form", "straight"), ("stop", "none"), ("lining", "yellow-metal")))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);

    private static Family Family => new(
        new FamilyVersion("brackenmere-4", "1.0.0"),
        Text.English("family.brackenmere-4", "Brackenmere four-speed (invented)"),
        Materials.With(Materials.GreyIron),
        [.. InputAssembly.Kinds, .. ThirdAndFourth.Kinds, .. FirstAndSecond.Kinds, .. Mainshaft.Kinds, .. Countershaft.Kinds, .. Selector.Kinds, .. Housing.Kinds],
        Stripped(Selector.Places, Housing.Rear, InputAssembly.Places, ThirdAndFourth.Places, FirstAndSecond.Places, Mainshaft.Places, Countershaft.Places, Housing.Case),
        Clearances.All,
        SelectiveSeries.All,
        Operations.All,
        Pairings.All,
        Pairings.Sets,
        GearTrain.Meshes,
        Damage.All,
        [],
        Complaints.Symptoms,
        Complaints.Causes,
        Cautions.All,
        GoldenCases.All)
    {
        Tests = Complaints.Tests,
        Fasteners = Building.Fasteners,
        Lubricants = Building.Lubricants,
        Gates = Building.Gates,
    };
}
