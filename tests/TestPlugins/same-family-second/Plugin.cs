using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Supplies the family shelf-same as well, and one of its own.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("same-family-second");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-same"), SmallFamily.Named("shelf-own")];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
