namespace RebuildApi.Contracts;

/// <summary>Who a plug-in is.</summary>
/// <param name="Id">Lower case, digits, dots and hyphens; the same as its folder.</param>
/// <param name="Version">Semantic version of the assembly.</param>
/// <param name="Author">Who made it.</param>
public sealed record PluginManifest(string Id, string Version, string Author);
