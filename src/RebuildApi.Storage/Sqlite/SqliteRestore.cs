using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>Puts a verified copy in the place of the database. What stood there is kept beside it, never removed.</summary>
internal sealed class SqliteRestore(StoreOptions options)
{
    /// <summary>What the copy is called until it stands in its place.</summary>
    public const string Arriving = ".restoring";

    private static readonly string[] Parts = ["", "-wal", "-shm"];

    /// <summary>Restores, unless the copy does not verify or it was only to be tried.</summary>
    /// <exception cref="StorageUnavailableException"><c>locked</c>: a program has the database open.</exception>
    public BackupReport Restore(string copy, bool dryRun)
    {
        var report = new SqliteCopy(options.Shop).Verify(copy, CancellationToken.None);
        if (!report.Verified)
            return report;
        RefuseWhileInUse();
        if (dryRun)
            return report;
        var arriving = options.Path + Arriving;
        CopyToDisk(copy, arriving);
        PutAside();
        File.Move(arriving, options.Path);
        return report;
    }

    private static void CopyToDisk(string from, string to)
    {
        File.Copy(from, to, overwrite: true);
        using var written = new FileStream(to, FileMode.Open, FileAccess.ReadWrite);
        written.Flush(flushToDisk: true);
    }

    // A damaged file can't say who uses it; it is put aside all the same, since that is why one restores.
    private void RefuseWhileInUse()
    {
        if (!File.Exists(options.Path))
            return;
        try
        {
            using var connection = new SqliteFile(options).OpenWriter();
            connection.Execute("PRAGMA locking_mode = EXCLUSIVE");
            connection.Execute("BEGIN EXCLUSIVE; ROLLBACK");
        }
        catch (SqliteException e) when (SqliteFaults.IsBusy(e))
        {
            throw SqliteFaults.Translate(e);
        }
        catch (SqliteException e) when (SqliteFaults.Translate(e) is StorageUnavailableException { Code: "damaged" })
        {
        }
    }

    private void PutAside()
    {
        var at = options.Time.GetUtcNow().UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        foreach (var part in Parts.Where(part => File.Exists(options.Path + part)))
            File.Move(options.Path + part, $"{options.Path}.replaced-{at}{part}");
    }
}
