using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>The smallest family that a hook can look at: two washers side by side.</summary>
internal static class SmallFamily
{
    public static Family Named(string id, params ImmutableArray<HookScope> hooks) => new(
        new FamilyVersion(id, "1.0.0"), Words(id), [],
        [new PartKind("washer", Words("washer"), [], [], [], [], null, false) { DamageClasses = ["scuffing"] }],
        [Place("left"), Place("right"), Place("far")],
        [], [], [], [], [], [], [], hooks, [], [], [], []);

    public static HookScope Hook(string id, int milliseconds = 30_000) => new(id, ["left", "right"], milliseconds);

    public static PluginManifest Manifest(string id) => new(id, "1.0.0", "Saltmarsh Lane Gearboxes (invented)");

    public static PairingVerdict Verdict(string rule, Compatibility outcome, params ImmutableArray<Reason> reasons) => new(
        rule, outcome, Severity.Wear, reasons, [], [], Forged(rule), "forged");

    private static RuleIdentity Forged(string rule) => new(new FamilyVersion("someone-else", "9.9.9"), "forged", "forged", "9.9", "9.9", rule);

    private static Position Place(string id) => new(id, Words(id), "washer", "mainshaft", 1, 1, []);

    private static Text Words(string words) => Text.English(words, words);
}
