using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Was made for a contract that is newer than the service's.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("newer-contract");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-newer")];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
