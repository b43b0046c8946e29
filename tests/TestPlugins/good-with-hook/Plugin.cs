using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Does everything right, and says what it was shown.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("good-with-hook");

    public ImmutableArray<Family> Declare() =>
        [SmallFamily.Named("shelf-good", SmallFamily.Hook("side"), SmallFamily.Hook("strays"), SmallFamily.Hook("repeats"))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => hookId switch
    {
        "side" => new HookAnswer([SmallFamily.Verdict("side", Compatibility.Compatible, Shown(snapshot))]),
        "strays" => new HookAnswer([SmallFamily.Verdict("strays/ours", Compatibility.Compatible), SmallFamily.Verdict("side", Compatibility.Compatible)]),
        _ => new HookAnswer([SmallFamily.Verdict(hookId, Compatibility.Compatible), SmallFamily.Verdict(hookId, Compatibility.Incompatible)]),
    };

    private static Reason Shown(UnitSnapshot snapshot) => new("shown", ImmutableSortedDictionary<string, string>.Empty
        .Add("components", string.Join(' ', snapshot.Components.Select(c => c.Id)))
        .Add("measurements", string.Join(' ', snapshot.Measurements.Select(m => m.Component)))
        .Add("instruments", string.Join(' ', snapshot.Instruments.Select(i => i.Id))), "side");
}
