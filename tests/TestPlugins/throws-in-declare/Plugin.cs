using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Breaks while it declares its families.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public PluginManifest Manifest => SmallFamily.Manifest("throws-in-declare");

    public ImmutableArray<Family> Declare() => throw new InvalidOperationException("broke while declaring");

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
