using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>
/// The oldest engine that is safe here. 3.7.0 to 3.51.2 can damage a file when one connection resets the write-ahead log while another writes
/// (sqlite.org, "Write-Ahead Logging", the WAL-reset bug, mended in 3.51.3).
/// </summary>
internal static class SqliteVersion
{
    public static readonly Version Oldest = new(3, 51, 3);

    public static void Require(SqliteConnection connection) => Require(Version.Parse(connection.ServerVersion));

    public static void Require(Version version)
    {
        if (version < Oldest)
            throw new StorageUnavailableException("engine-too-old", $"SQLite {version} can damage the database; {Oldest} or newer is needed.");
    }
}
