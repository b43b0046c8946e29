using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.InteropServices;

namespace RebuildApi.PluginHost.Trust;

/// <summary>Looks through the assemblies of a plug-in as data, before any of its code runs.</summary>
internal static class AssemblyInspection
{
    private static readonly string Contract = typeof(Contracts.ContractVersion).Assembly.GetName().Name!;
    private static readonly Version Ours = typeof(Contracts.ContractVersion).Assembly.GetName().Version!;

    /// <summary>Checks that everything is managed code, that all it needs is there, and that the contract is not newer than ours.</summary>
    /// <returns>The contract version it was compiled against, major and minor.</returns>
    /// <exception cref="PluginFault">It can't be loaded, and why.</exception>
    public static Version Check(PluginFiles files)
    {
        var assemblies = files.Files.Where(f => !IsContractCopy(f)).Select(f => (File: f, References: ReferencesOf(f))).ToList();
        var contracts = assemblies.SelectMany(a => a.References).Where(r => r.Name == Contract).Select(r => r.Version).ToList();
        var newest = contracts.Max() ?? throw PluginFault.Refused($"{files.Main.Name} does not use the contract, so it can hold no plug-in.");
        RefuseOtherContract(contracts.Min()!, newest);
        foreach (var (file, references) in assemblies)
        {
            var missing = references.FirstOrDefault(r => !IsThere(r.Name, files));
            if (missing.Name is not null)
                throw PluginFault.Refused($"{file.Name} needs {missing.Name} {missing.Version}, which is not in its folder.");
        }

        return newest;
    }

    /// <summary>Whether an assembly is part of .NET itself; only those and the contract are shared with a plug-in.</summary>
    public static bool IsOfFramework(string name) =>
        File.Exists(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), name + ".dll"));

    /// <summary>Whether it is the contract. A plug-in's own copy is never loaded: its types would not be ours.</summary>
    public static bool IsContract(string name) => string.Equals(name, Contract, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a file is a plug-in's own copy of the contract.</summary>
    public static bool IsContractCopy(PluginFile file) => IsContract(Path.GetFileNameWithoutExtension(file.Name));

    private static void RefuseOtherContract(Version oldest, Version newest)
    {
        var ours = Ours.ToString(2);
        if (newest.Major > Ours.Major || (newest.Major == Ours.Major && newest.Minor > Ours.Minor))
            throw PluginFault.Refused($"It was made for contract {newest.ToString(2)}; this service has {ours}. A newer service is needed.");
        if (oldest.Major < Ours.Major)
            throw PluginFault.Refused($"It was made for contract {oldest.ToString(2)}; this service has {ours}. The plug-in must be made anew.");
    }

    private static bool IsThere(string name, PluginFiles files) =>
        IsContract(name) || IsOfFramework(name) || files.Files.Any(f => f.Name == name + ".dll");

    private static ImmutableArray<(string Name, Version Version)> ReferencesOf(PluginFile file)
    {
        try
        {
            using var image = new PEReader(ImmutableCollectionsMarshal.AsImmutableArray(file.Bytes));
            if (!image.HasMetadata)
                throw PluginFault.Refused($"{file.Name} is native code.");
            var metadata = image.GetMetadataReader();
            return metadata.IsAssembly
                ? [.. metadata.AssemblyReferences.Select(metadata.GetAssemblyReference).Select(r => (metadata.GetString(r.Name), r.Version))]
                : throw PluginFault.Refused($"{file.Name} is not an assembly.");
        }
        catch (BadImageFormatException)
        {
            throw PluginFault.Refused($"{file.Name} is not an assembly.");
        }
    }
}
