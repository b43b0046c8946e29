using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Is used once and let go; no other test loads it.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("lets-go");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-lets-go", SmallFamily.Hook("side"))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([SmallFamily.Verdict(hookId, Compatibility.Compatible)]);
}
