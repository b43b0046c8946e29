using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace TestPlugins;

/// <summary>Breaks before it has said a word.</summary>
public sealed class Plugin : IFamilyPlugin
{
    public Plugin() => throw new InvalidOperationException("broke in the\nconstructor");

    public PluginManifest Manifest => SmallFamily.Manifest("throws-in-constructor");

    public ImmutableArray<Family> Declare() => [];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);
}
