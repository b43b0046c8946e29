using RebuildApi.PluginHost.Loading;
using RebuildApi.PluginHost.Trust;

namespace RebuildApi.PluginHost.Workers;

/// <summary>
/// What plug-ins declared, kept by the hash of their assemblies and the build of the contract, so that a plug-in which is all data needs a process only the
/// first time that it is seen.
/// </summary>
internal sealed class DeclarationCache(string? folder)
{
    private const int Longest = 64 << 20;

    /// <summary>What was declared before, or else what is declared now.</summary>
    public DeclaredBytes GetOrAdd(PluginFiles files, Func<DeclaredBytes> declare)
    {
        if (folder is null)
            return declare();
        var contract = typeof(Contracts.ContractVersion).Module.ModuleVersionId.ToString("N");
        var path = Path.Combine(folder, $"{files.Id}-{files.Sha256}-{contract}.declared");
        if (Read(path) is { } kept)
            return kept;
        var declared = declare();
        Write(path, declared);
        return declared;
    }

    private static DeclaredBytes? Read(string path)
    {
        try
        {
            using var stream = File.OpenRead(path);
            return Message.Read(stream, Longest) is { } message ? WorkerProtocol.ToDeclared(message) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException or PluginFault)
        {
            // Not there, or not whole: it is asked for again.
            return null;
        }
    }

    private static void Write(string path, DeclaredBytes declared)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            var half = path + "." + Path.GetRandomFileName();
            using (var stream = File.Create(half))
                WorkerProtocol.Declared(declared).Write(stream);
            File.Move(half, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It only saves time; without it the plug-in is asked again at the next start.
        }
    }
}
