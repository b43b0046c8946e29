using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Lies in one folder and calls itself by another name.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("good-with-hook");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-misnamed")];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
