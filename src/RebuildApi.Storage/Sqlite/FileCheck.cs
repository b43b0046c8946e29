using Dapper;
using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>The engine's own checks of a file.</summary>
internal static class FileCheck
{
    /// <summary>Refuses a damaged file before anything is written to it. Never starts empty in its place.</summary>
    public static void Quick(SqliteConnection connection)
    {
        var found = connection.Query<string>("PRAGMA quick_check").ToArray();
        if (found is not ["ok"])
            throw new StorageUnavailableException("damaged", $"The database is damaged ({found[0]}). Restore the last verified backup.");
    }

    /// <summary>Everything that the engine finds wrong; empty when nothing is.</summary>
    public static IEnumerable<string> Thorough(SqliteConnection connection)
    {
        var integrity = connection.Query<string>("PRAGMA integrity_check").Where(line => line != "ok").ToArray();
        var orphans = connection.Query("PRAGMA foreign_key_check").Count();
        return orphans == 0 ? integrity : [.. integrity, FormattableString.Invariant($"{orphans} rows point to rows that are not there")];
    }
}
