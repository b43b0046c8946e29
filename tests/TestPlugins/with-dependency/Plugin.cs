using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Needs another assembly in its folder.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("with-dependency");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named(Dependency.Names.OfFamily)];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
