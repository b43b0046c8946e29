using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Brings its own copy of the contract.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("bundles-own-contract");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-bundles", SmallFamily.Hook("side"))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([SmallFamily.Verdict(hookId, Compatibility.Compatible)]);
}
