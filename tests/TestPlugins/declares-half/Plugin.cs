using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Leaves out what the contract asks for.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("declares-half");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-half") with { Name = null! }];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
