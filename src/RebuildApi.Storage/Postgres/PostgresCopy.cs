using System.Collections.Immutable;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Storage.Postgres;

/// <summary>Copies one shop out of a shared database into a file of the engine in the process, by way of portable lines; so every sum and the chain are held against each other.</summary>
internal sealed class PostgresCopy(StoreOptions options, Func<CancellationToken, ValueTask<ChainReport>> walk)
{
    public async ValueTask<BackupReport> Make(string path, CancellationToken cancellation)
    {
        if (File.Exists(path))
            throw new IOException($"There is already a file {path}.");
        var folder = Directory.CreateDirectory(path + ".taking");
        try
        {
            return await Make(folder.FullName, path, cancellation);
        }
        catch (StorageUnavailableException e) when (e.Code == "damaged")
        {
            return new BackupReport(path, 0, 0, ImmutableSortedDictionary<string, long>.Empty, await walk(cancellation), [e.Message]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private async ValueTask<BackupReport> Make(string folder, string path, CancellationToken cancellation)
    {
        var lines = Path.Combine(folder, "shop.lines");
        var file = options with { Path = Path.Combine(folder, "shop.db"), Database = null };
        PortableFile.Export(options, lines, null, cancellation);
        PortableFile.Import(file, lines, null, cancellation);
        await using var taken = SqliteStore.Open(file);
        return await taken.Backup(path, cancellation);
    }
}
