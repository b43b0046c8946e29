using System.Security.Cryptography;

namespace RebuildApi.PluginHost.Trust;

/// <summary>A family file, read once. It is data: what it can do is what a family can say, but that decides what a shop is told, so its hash is approved too.</summary>
/// <param name="Id">Its name, by which it is listed beside the plug-ins.</param>
/// <param name="Bytes">All of it.</param>
internal sealed record FamilyFile(string Id, byte[] Bytes)
{
    /// <summary>What <c>sha256sum</c> prints for it, lower-case hex.</summary>
    public string Sha256 { get; } = Convert.ToHexStringLower(SHA256.HashData(Bytes));

    /// <summary>Whether a file is to be looked at: YAML by its name.</summary>
    public static bool IsByName(string path) => Path.GetExtension(path) is ".yaml" or ".yml";

    /// <summary>Reads a file, believing nothing: no links, nothing oversized, no pipes.</summary>
    /// <exception cref="PluginFault">It breaks a rule.</exception>
    public static FamilyFile Read(string path, int mostBytes)
    {
        var file = new FileInfo(path);
        if (!PluginFolder.IsId(file.Name))
            throw PluginFault.Refused("Its name is not lower-case letters, digits, dots and hyphens.");
        if (file.LinkTarget is not null || file.Attributes.HasFlag(FileAttributes.ReparsePoint))
            throw PluginFault.Refused("It is a link.");
        if (file.Length > mostBytes)
            throw PluginFault.Refused($"It holds more than {mostBytes} bytes.");
        // Pipes and devices show no length; opening one could wait for ever.
        if (file.Length == 0)
            throw PluginFault.Refused("It is empty.");
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        var bytes = new byte[file.Length];
        stream.ReadExactly(bytes);
        return new FamilyFile(file.Name, bytes);
    }
}
