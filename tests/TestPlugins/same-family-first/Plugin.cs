using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Supplies the family shelf-same.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("same-family-first");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-same")];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
