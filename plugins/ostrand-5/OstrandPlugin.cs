namespace Ostrand5;

/// <summary>
/// An invented five-speed: aluminium case, two shafts on tapered bearings that shims set to float or preload, thermal growth, lined blocker rings.
/// Drawn in millimetres. All of it is data; there is no rule in code.
/// </summary>
public sealed class OstrandPlugin : IFamilyPlugin
{
    public PluginManifest Manifest { get; } = new("ostrand-5", "1.0.0", "Saltmarsh Lane Gearboxes");

    public ImmutableArray<Family> Declare() => [Family.Proven(Millimetre(0.001m), RuleCases.Sound(("type", "tapered")))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);

    private static Family Family => new(
        new FamilyVersion("ostrand-5", "1.0.0"),
        Text.English("family.ostrand-5", "Ostrand five-speed (invented)"),
        Materials.With(Materials.Aluminium),
        [.. InputShaft.Kinds, .. OutputShaft.Kinds, .. CaseAndSelector.Kinds],
        Stripped(CaseAndSelector.Front, InputShaft.Places, OutputShaft.Places, CaseAndSelector.Case),
        Clearances.All,
        SelectiveSeries.All,
        Rules.Operations,
        Pairings.All,
        Pairings.Sets,
        GearTrain.Meshes,
        Rules.Damage,
        [],
        Complaints.Symptoms,
        Complaints.Causes,
        Rules.Cautions,
        GoldenCases.All)
    {
        Tests = Complaints.Tests,
        Fasteners = Building.Fasteners,
        Lubricants = Building.Lubricants,
        Gates = Building.Gates,
    };
}
