using System.Collections.Immutable;
using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>Brings a file to the schema of this program: all missing steps in one transaction, after a copy of what was there.</summary>
internal sealed class Schema(SqliteConnection connection, TimeProvider time, ImmutableArray<Migration> steps)
{
    private const string Ledger =
        "CREATE TABLE migration (number INTEGER NOT NULL PRIMARY KEY, name TEXT NOT NULL, applied TEXT NOT NULL)";

    /// <summary>Number of the last step that was applied to a file; 0 for an empty one.</summary>
    /// <exception cref="StorageUnavailableException">It holds something else.</exception>
    public static int NumberOf(SqliteConnection connection)
    {
        var tables = connection.Query<string>("SELECT name FROM sqlite_master WHERE type = 'table'").ToHashSet(StringComparer.Ordinal);
        if (tables.Count == 0)
            return 0;
        if (!tables.Contains("migration"))
            throw new StorageUnavailableException("not-ours", "The file is a database of another program. Choose another path.");
        return connection.ExecuteScalar<int>("SELECT COALESCE(MAX(number), 0) FROM migration");
    }

    /// <summary>Applies what is missing.</summary>
    /// <returns>The copy that was made before, or null when none was needed.</returns>
    public string? Upgrade()
    {
        var stands = NumberOf(connection);
        var missing = steps.Where(s => s.Number > stands).ToArray();
        if (missing.Length == 0)
            return null;
        var copy = stands == 0 ? null : CopyBefore(missing[0]);
        Apply(missing, isNew: stands == 0);
        return copy;
    }

    /// <summary>Refuses a file that is newer than this program, and one that is older when it can't be brought up to date.</summary>
    public void Check(int stands, bool readOnly) =>
        SchemaCheck.Require(stands, steps[^1].Number, readOnly, "Use the newer program, or restore the copy made before the upgrade.");

    private string CopyBefore(Migration step)
    {
        var at = time.GetUtcNow().UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        var copy = $"{connection.DataSource}.before-{step.Name}-{at}";
        connection.Execute("VACUUM INTO @copy", new { copy });
        RequireWhole(copy);
        return copy;
    }

    // An upgrade whose way back is damaged does not begin.
    private static void RequireWhole(string copy)
    {
        using (var written = new FileStream(copy, FileMode.Open, FileAccess.ReadWrite))
            written.Flush(flushToDisk: true);
        using var opened = SqliteFile.OpenCopy(copy);
        FileCheck.Quick(opened);
    }

    private void Apply(IEnumerable<Migration> missing, bool isNew)
    {
        using var transaction = connection.BeginTransaction(deferred: false);
        if (isNew)
            connection.Execute(Ledger, transaction: transaction);
        foreach (var step in missing)
        {
            connection.Execute(step.Sql, transaction: transaction);
            connection.Execute(
                "INSERT INTO migration (number, name, applied) VALUES (@Number, @Name, @applied)",
                new { step.Number, step.Name, applied = Stamp.Of(time.GetUtcNow()) }, transaction);
        }

        transaction.Commit();
    }
}
