namespace Kestermere6;

/// <summary>
/// An invented six-speed: back-tapered engagement teeth with travel stops, three-cone synchronizers on first and second, caged needle bearings. Drawn in
/// millimetres. All of it is data; there is no rule in code.
/// </summary>
public sealed class KestermerePlugin : IFamilyPlugin
{
    public PluginManifest Manifest { get; } = new("kestermere-6", "1.0.0", "Saltmarsh Lane Gearboxes");

    public ImmutableArray<Family> Declare() => [Family.Proven(Millimetre(0.001m), RuleCases.Sound())];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);

    private static Family Family => new(
        new FamilyVersion("kestermere-6", "1.0.0"),
        Text.English("family.kestermere-6", "Kestermere six-speed (invented)"),
        Materials.With(Materials.Aluminium),
        Parts.All,
        Places.All,
        Clearances.All,
        Clearances.Series,
        Rules.Operations,
        Pairings.All,
        Pairings.Sets,
        GearTrain.Meshes,
        Rules.Damage,
        [],
        Rules.Symptoms,
        Rules.Causes,
        Rules.Cautions,
        GoldenCases.All)
    {
        Tests = Rules.Tests,
        Fasteners = Building.Fasteners,
        Lubricants = Building.Lubricants,
        Gates = Building.Gates,
    };
}
