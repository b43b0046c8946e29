using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Server.Wire.Customers;
using RebuildApi.Storage;

namespace RebuildApi.Server.Composition.Customers;

/// <summary>The copies of the records that the service knows of: backups, and databases that an upgrade or a restore kept.</summary>
/// <param name="shelf">The backups.</param>
/// <param name="data">The data folder.</param>
/// <param name="kept">How many of the backups that are made by themselves are kept.</param>
public sealed class OldCopies(BackupShelf shelf, string data, int kept)
{
    private const string ByHand = "It stays until a person removes it.";

    /// <summary>All of them, each with when it goes.</summary>
    public ImmutableArray<CopyWire> List() => [.. shelf.List().Select(Of), .. Databases()];

    private CopyWire Of(Backup backup) => new(backup.Name, backup.Path, backup.Manifest?.Made, backup.Manifest?.By == BackupManifest.BySchedule
        ? string.Create(CultureInfo.InvariantCulture, $"It goes when {kept} newer ones were made by themselves, one each day.")
        : ByHand);

    private IEnumerable<CopyWire> Databases() => Directory.Exists(data)
        ? Directory.EnumerateFiles(data, BackupShelf.Database + ".*")
            .Where(f => f.Contains(".before-", StringComparison.Ordinal) || f.Contains(".replaced-", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(f => new CopyWire(Path.GetFileName(f), f, File.GetLastWriteTimeUtc(f), ByHand))
        : [];
}
