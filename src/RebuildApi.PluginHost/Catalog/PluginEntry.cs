using System.Collections.Immutable;
using RebuildApi.Contracts;

namespace RebuildApi.PluginHost.Catalog;

/// <summary>One plug-in as it was last taken up.</summary>
/// <param name="Status">How it stands by itself, before it is known which of its families another plug-in has already.</param>
/// <param name="Running">Its code and families, when it is loaded.</param>
internal sealed record PluginEntry(PluginStatus Status, RunningPlugin? Running)
{
    /// <summary>A plug-in that is not loaded.</summary>
    public static PluginEntry Idle(string id, PluginState state, string reason, string? sha256, string? contract, DateTimeOffset since) =>
        new(new PluginStatus(id, state, reason, null, null, sha256, [], [], contract, null, 0, since), null);
}

/// <summary>A plug-in that is loaded.</summary>
/// <param name="Families">Its families that stood the check.</param>
/// <param name="Door">The way to its rules in code; closed when it is replaced. None for a family file, which has no code.</param>
/// <param name="Reads">Whether it reads family files.</param>
internal sealed record RunningPlugin(ImmutableArray<LoadedFamily> Families, Hooks.HookDoor? Door, bool Reads);
