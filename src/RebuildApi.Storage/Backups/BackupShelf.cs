using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using RebuildApi.Storage.Backups;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage;

/// <summary>
/// The backups of a shop. One backup is one folder: <c>shop.db</c>, the attachments, and <c>manifest.json</c> with the hash of each. It gets its name only
/// once it was opened and checked, so a folder without <c>.partial</c> behind its name is whole.
/// </summary>
/// <param name="folder">The folder that holds them.</param>
/// <param name="attachments">The shop's attachments; need not exist.</param>
/// <param name="options">Where the database is.</param>
public sealed class BackupShelf(string folder, string attachments, StoreOptions options)
{
    /// <summary>Name of the database in a backup.</summary>
    public const string Database = "shop.db";

    /// <summary>Name of the folder of attachments, in a backup and in the data folder.</summary>
    public const string AttachmentFolder = "attachments";

    private const string Manifest = "manifest.json";
    private const string Partial = ".partial";

    /// <summary>The usual places of a data folder.</summary>
    /// <param name="data">The data folder.</param>
    /// <param name="backups">Where the backups lie; <c>backups</c> in the data folder when not said.</param>
    /// <param name="options">Where the database is.</param>
    public static BackupShelf Of(string data, string? backups, StoreOptions options) =>
        new(backups ?? Path.Combine(data, "backups"), Path.Combine(data, AttachmentFolder), options);

    /// <summary>The folder that holds them.</summary>
    public string Folder => folder;

    /// <summary>Makes one while the database is in use, and checks it.</summary>
    /// <param name="store">The database.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="cancellation">Gives up; nothing stays.</param>
    /// <exception cref="IOException">It can't be written.</exception>
    /// <exception cref="StorageUnavailableException">The database can't be read, or the copy did not verify (<c>damaged</c>).</exception>
    public async Task<Backup> Make(IStore store, string by, CancellationToken cancellation)
    {
        var made = options.Time.GetUtcNow();
        var name = made.UtcDateTime.ToString("yyyyMMdd'T'HHmmssfff'Z'", CultureInfo.InvariantCulture);
        var path = Path.Combine(folder, name);
        var partial = path + Partial;
        try
        {
            Directory.CreateDirectory(partial);
            var manifest = await Write(store, partial, made, by, cancellation);
            WriteManifest(partial, manifest);
            Directory.Move(partial, path);
            return new Backup(name, path, manifest, []);
        }
        finally
        {
            if (Directory.Exists(partial))
                Directory.Delete(partial, recursive: true);
        }
    }

    /// <summary>Those that are there, newest first, as they were when they were made; their files are not read again.</summary>
    public ImmutableArray<Backup> List() => !Directory.Exists(folder)
        ? []
        : [.. Directory.EnumerateDirectories(folder)
            .Where(d => File.Exists(Path.Combine(d, Manifest)) && !d.EndsWith(Partial, StringComparison.Ordinal))
            .Select(Look)
            .OrderByDescending(b => b.Name, StringComparer.Ordinal)];

    /// <summary>Reads all of one again: every hash, the engine's own check, row counts and hash chain.</summary>
    /// <param name="path">Its folder; or a copy of a database by itself.</param>
    /// <param name="question">What is asked of its chain.</param>
    /// <param name="cancellation">Gives up.</param>
    public CheckedBackup Check(string path, ChainQuestion question, CancellationToken cancellation)
    {
        if (!Directory.Exists(path))
            return new CheckedBackup(new Backup(Path.GetFileName(path), path, null, []), new SqliteCopy(options.Shop).Verify(path, question, cancellation));
        var backup = Look(path);
        var report = new SqliteCopy(options.Shop).Verify(Path.Combine(path, Database), question, cancellation);
        if (backup.Manifest is { } manifest)
            backup = backup with { Problems = [.. BackupFiles.Problems(path, manifest), .. Differences(manifest, report)] };
        return new CheckedBackup(backup, report);
    }

    /// <summary>Removes the oldest of those that were made by themselves, so that no more than so many stay.</summary>
    /// <returns>The names of those that went.</returns>
    public ImmutableArray<string> Prune(int kept)
    {
        var old = List().Where(b => b.Manifest?.By == BackupManifest.BySchedule).Skip(kept).ToImmutableArray();
        foreach (var backup in old)
            Directory.Delete(backup.Path, recursive: true);
        return [.. old.Select(b => b.Name)];
    }

    private async Task<BackupManifest> Write(IStore store, string partial, DateTimeOffset made, string by, CancellationToken cancellation)
    {
        var report = await store.Backup(Path.Combine(partial, Database), cancellation);
        if (!report.Verified)
            throw new StorageUnavailableException("damaged", $"The copy did not verify: {string.Join(' ', report.Problems)}");
        // After the database: whatever that speaks of was there before it did.
        foreach (var file in BackupFiles.Attachments(attachments))
        {
            cancellation.ThrowIfCancellationRequested();
            BackupFiles.Copy(file, Path.Combine(partial, AttachmentFolder, Path.GetRelativePath(attachments, file)));
        }

        var copied = BackupFiles.Attachments(Path.Combine(partial, AttachmentFolder)).Select(f => BackupFiles.Of(partial, f)).ToImmutableArray();
        if (BackupFiles.Misnamed(copied).FirstOrDefault() is { } damaged)
            throw new StorageUnavailableException("damaged", damaged);
        return new BackupManifest(
            BackupManifest.TheFormat, made, by, report.Schema, report.Rows, report.Chain.Entries, report.Chain.Head,
            BackupFiles.Of(partial, Path.Combine(partial, Database)), copied);
    }

    private static void WriteManifest(string partial, BackupManifest manifest)
    {
        using var stream = new FileStream(Path.Combine(partial, Manifest), FileMode.CreateNew);
        JsonSerializer.Serialize(stream, manifest, BackupJson.Default.BackupManifest);
        stream.Flush(flushToDisk: true);
    }

    private static Backup Look(string path)
    {
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(path));
        try
        {
            var manifest = JsonSerializer.Deserialize(File.ReadAllText(Path.Combine(path, Manifest)), BackupJson.Default.BackupManifest);
            return manifest?.Format == BackupManifest.TheFormat
                ? new Backup(name, path, manifest, [])
                : new Backup(name, path, null, [$"Its manifest is not of the format {BackupManifest.TheFormat}."]);
        }
        catch (Exception e) when (e is IOException or JsonException or UnauthorizedAccessException)
        {
            return new Backup(name, path, null, [$"Its manifest can't be read: {e.Message}"]);
        }
    }

    private static IEnumerable<string> Differences(BackupManifest manifest, BackupReport report)
    {
        if (report.Chain.Head != manifest.Head || report.Chain.Entries != manifest.Entries)
            yield return "The chain of the database does not end where the manifest says.";
    }
}

/// <summary>What reading all of a backup again found.</summary>
/// <param name="Backup">The backup, with what is wrong with its files.</param>
/// <param name="Report">What is wrong with its database.</param>
public sealed record CheckedBackup(Backup Backup, BackupReport Report)
{
    /// <summary>Everything that is wrong, in words.</summary>
    public ImmutableArray<string> Problems => [.. Backup.Problems, .. Report.Problems];

    /// <summary>Whether it can be restored.</summary>
    public bool Verified => Problems.IsEmpty;
}
