using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace RebuildApi.PluginHost.Trust;

/// <summary>One assembly of a plug-in, read once.</summary>
/// <param name="Name">File name without a folder.</param>
/// <param name="Bytes">All of it.</param>
internal sealed record PluginFile(string Name, byte[] Bytes)
{
    /// <summary>Hash of the bytes, lower-case hex.</summary>
    public string Sha256 { get; } = Convert.ToHexStringLower(SHA256.HashData(Bytes));
}

/// <summary>All assemblies of a plug-in, read once. They are approved together: none may be added, taken away or exchanged.</summary>
/// <param name="Id">The plug-in.</param>
/// <param name="Files">The assemblies by name.</param>
internal sealed record PluginFiles(string Id, ImmutableArray<PluginFile> Files)
{
    /// <summary>The hash that is approved.</summary>
    public string Sha256 { get; } = HashOf(Files.Select(f => (f.Name, f.Sha256)));

    /// <summary>The assembly that has the plug-in's class.</summary>
    public PluginFile Main => Files.Single(f => f.Name == Id + ".dll");

    /// <summary>
    /// SHA-256 of the lines "hash, two blanks, name, line feed" in ordinal order of names: what
    /// <c>LC_ALL=C sha256sum *.dll | sha256sum</c> prints in the plug-in's folder.
    /// </summary>
    public static string HashOf(IEnumerable<(string Name, string Sha256)> files)
    {
        var lines = files.OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => $"{f.Sha256}  {f.Name}\n");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(lines))));
    }
}
