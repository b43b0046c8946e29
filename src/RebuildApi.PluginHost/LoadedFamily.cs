using RebuildApi.Contracts;

namespace RebuildApi.PluginHost;

/// <summary>A family that can be used, and who supplies it.</summary>
/// <param name="Family">The declaration, checked.</param>
/// <param name="Supplier">The plug-in or family file, with the hash that was approved.</param>
public sealed record LoadedFamily(Family Family, PluginIdentity Supplier)
{
    /// <summary>Id of the plug-in or file.</summary>
    public string Plugin => Supplier.Id;
}
