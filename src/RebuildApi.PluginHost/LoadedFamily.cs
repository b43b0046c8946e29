using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>A family that can be used, and who supplies it.</summary>
/// <param name="Family">The declaration, checked.</param>
/// <param name="Plugin">Id of the plug-in.</param>
/// <param name="AssemblySha256">Hash of the plug-in's assemblies, lower-case hex.</param>
public sealed record LoadedFamily(Family Family, string Plugin, string AssemblySha256);
