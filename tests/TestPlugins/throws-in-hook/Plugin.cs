using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Its rule in code breaks each time.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("throws-in-hook");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-throws", SmallFamily.Hook("breaks"))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => throw new InvalidOperationException("broke in the hook");
}
