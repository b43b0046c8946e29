using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Its rule in code never comes back.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("loops-in-hook");

    public ImmutableArray<Family> Declare() => [SmallFamily.Named("shelf-loops", SmallFamily.Hook("loops", milliseconds: 100))];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot)
    {
        while (true)
            Thread.SpinWait(1000);
    }
}
