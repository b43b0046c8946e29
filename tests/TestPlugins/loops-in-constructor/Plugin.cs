using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Is never finished being made.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public Plugin()
    {
        while (true)
            Thread.SpinWait(1000);
    }

    public PluginManifest Manifest => SmallFamily.Manifest("loops-in-constructor");

    public ImmutableArray<Family> Declare() => [];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
