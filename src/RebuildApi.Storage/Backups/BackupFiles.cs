using System.Collections.Immutable;
using System.Security.Cryptography;

namespace RebuildApi.Storage.Backups;

/// <summary>Copies files to the disk, and knows them again by their hash.</summary>
internal static class BackupFiles
{
    private const int Sha256Digits = 64;

    /// <summary>The attachments below a folder, by name; nothing when there is none. What is not named by a SHA-256 is being written, or not ours.</summary>
    public static IEnumerable<string> Attachments(string folder) => !Directory.Exists(folder)
        ? []
        : Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(IsNamedByHash).Order(StringComparer.Ordinal);

    /// <summary>Copies a file and waits until it is on the disk.</summary>
    public static void Copy(string from, string to)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        File.Copy(from, to, overwrite: true);
        using var written = new FileStream(to, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    }

    /// <summary>A file of a backup as it stands on the disk.</summary>
    public static BackupFile Of(string folder, string path)
    {
        using var stream = File.OpenRead(path);
        return new BackupFile(Path.GetRelativePath(folder, path).Replace('\\', '/'), stream.Length, Convert.ToHexStringLower(SHA256.HashData(stream)));
    }

    /// <summary>What is wrong with the files that a manifest names.</summary>
    public static IEnumerable<string> Problems(string folder, BackupManifest manifest) =>
        manifest.Attachments.Prepend(manifest.Database).Select(file => Problem(folder, file)).OfType<string>();

    private static string? Problem(string folder, BackupFile file)
    {
        var path = Path.Combine(folder, file.Name);
        if (!Path.GetFullPath(path).StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            return $"{file.Name} lies outside the backup.";
        if (!File.Exists(path))
            return $"{file.Name} is missing.";
        return Of(folder, path).Sha256 == file.Sha256 ? null : $"{file.Name} was changed: its hash is not the one that was noted.";
    }

    private static bool IsNamedByHash(string path)
    {
        var name = Path.GetFileNameWithoutExtension(path);
        return name.Length == Sha256Digits && name.All(char.IsAsciiHexDigit);
    }

    /// <summary>Attachments whose bytes are not what their name says.</summary>
    public static IEnumerable<string> Misnamed(ImmutableArray<BackupFile> attachments) => attachments
        .Where(a => !Path.GetFileNameWithoutExtension(a.Name).Equals(a.Sha256, StringComparison.OrdinalIgnoreCase))
        .Select(a => $"{a.Name} is damaged: its bytes have another hash than its name says.");
}
