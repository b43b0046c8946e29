using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace RebuildApi.PluginHost.Trust;

/// <summary>Reads the assemblies of one plug-in's folder, believing nothing: no links, no folders inside, nothing oversized, no native code by name.</summary>
internal static partial class PluginFolder
{
    private static readonly ImmutableHashSet<string> NativeEndings =
        ImmutableHashSet.Create(StringComparer.OrdinalIgnoreCase, ".so", ".dylib", ".exe", ".a", ".lib", ".node");

    /// <summary>Whether a name can be a plug-in's id: lower case, digits, dots and hyphens, never a path.</summary>
    public static bool IsId(string name) => name.Length <= 64 && IdPattern().IsMatch(name);

    /// <summary>Reads every assembly once.</summary>
    /// <exception cref="PluginFault">The folder breaks a rule.</exception>
    public static PluginFiles Read(string folder, FolderLimits limits)
    {
        var directory = new DirectoryInfo(folder);
        if (!IsId(directory.Name))
            throw PluginFault.Refused("Its folder's name is not lower-case letters, digits, dots and hyphens.");
        RefuseLink(directory);
        var entries = Entries(directory, limits);
        var total = 0L;
        var files = ImmutableArray.CreateBuilder<PluginFile>();
        foreach (var entry in entries.Where(IsCode).OrderBy(e => e.Name, StringComparer.Ordinal))
        {
            var file = new PluginFile(entry.Name, ReadAll((FileInfo)entry, limits.BytesPerFile));
            total += file.Bytes.LongLength;
            if (total > limits.BytesInAll)
                throw PluginFault.Refused($"Its assemblies hold more than {limits.BytesInAll} bytes.");
            files.Add(file);
        }

        if (!files.Any(f => f.Name == directory.Name + ".dll"))
            throw PluginFault.Refused($"There is no {directory.Name}.dll in its folder.");
        return new PluginFiles(directory.Name, files.ToImmutable());
    }

    private static List<FileSystemInfo> Entries(DirectoryInfo directory, FolderLimits limits)
    {
        // Counted while it is listed, so that a folder of very many files costs no more than one at the limit.
        var entries = directory.EnumerateFileSystemInfos().Take(limits.Files + 1).ToList();
        if (entries.Count > limits.Files)
            throw PluginFault.Refused($"Its folder holds more than {limits.Files} files.");
        foreach (var entry in entries)
        {
            RefuseLink(entry);
            if (entry is DirectoryInfo)
                throw PluginFault.Refused($"There is a folder inside its folder: {entry.Name}.");
            if (NativeEndings.Contains(entry.Extension))
                throw PluginFault.Refused($"{entry.Name} is native code.");
        }

        return entries;
    }

    private static bool IsCode(FileSystemInfo entry) => entry.Extension.Equals(".dll", StringComparison.OrdinalIgnoreCase);

    private static void RefuseLink(FileSystemInfo entry)
    {
        if (entry.LinkTarget is not null || entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
            throw PluginFault.Refused($"{entry.Name} is a link.");
    }

    private static byte[] ReadAll(FileInfo file, long limit)
    {
        if (file.Length > limit)
            throw PluginFault.Refused($"{file.Name} holds more than {limit} bytes.");
        // Pipes and devices show no length; opening one could wait for ever.
        if (file.Length == 0)
            throw PluginFault.Refused($"{file.Name} is empty.");
        using var stream = new FileStream(file.FullName, FileMode.Open, FileAccess.Read, FileShare.Read);
        var bytes = new byte[file.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    [GeneratedRegex(@"\A[a-z0-9]+([.-][a-z0-9]+)*\z", RegexOptions.CultureInvariant)]
    private static partial Regex IdPattern();
}
