using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Ends the process when it is asked for its families.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("exits-in-declare");

    public ImmutableArray<Family> Declare()
    {
        Environment.Exit(77);
        return [];
    }

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
