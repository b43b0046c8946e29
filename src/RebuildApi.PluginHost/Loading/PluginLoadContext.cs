using System.Reflection;
using System.Runtime.Loader;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Loading;

/// <summary>
/// One plug-in's own assemblies, apart from everybody else's. The contract and .NET itself are shared; everything else comes from the bytes that
/// were approved or not at all, never from what the service happens to use.
/// </summary>
internal sealed class PluginLoadContext(PluginFiles files) : AssemblyLoadContext(files.Id, isCollectible: true)
{
    /// <summary>Loads the assembly that has the plug-in's class.</summary>
    public Assembly LoadMain() => LoadBytes(files.Main);

    /// <inheritdoc/>
    protected override Assembly? Load(AssemblyName assemblyName)
    {
        var name = assemblyName.Name!;
        if (AssemblyInspection.IsContract(name))
            return typeof(Contracts.ContractVersion).Assembly;
        if (files.Files.FirstOrDefault(f => f.Name == name + ".dll") is { } own)
            return LoadBytes(own);
        // Null falls through to the service's own assemblies, which are none of a plug-in's business.
        return AssemblyInspection.IsOfFramework(name) ? null : throw new FileNotFoundException($"{name} is not in the plug-in's folder.");
    }

    private Assembly LoadBytes(PluginFile file) => LoadFromStream(new MemoryStream(file.Bytes, writable: false));
}
