using Dapper;
using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>Opens connections to the one file: one that writes, pooled ones that read.</summary>
internal sealed class SqliteFile(StoreOptions options)
{
    private readonly string _readers = Text(options.Path, SqliteOpenMode.ReadOnly, pooling: true);

    public StoreOptions Options => options;

    /// <summary>The connection that is to write; in a store for reading only, the one that holds the file open. Changes nothing yet.</summary>
    public SqliteConnection OpenWriter() =>
        Open(Text(options.Path, options.ReadOnly ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWriteCreate, pooling: false));

    /// <summary>A connection from the pool that can't write.</summary>
    public SqliteConnection OpenReader() => Open(_readers);

    /// <summary>Closes the pool, so that the file is let go.</summary>
    public void Close()
    {
        using var any = new SqliteConnection(_readers);
        SqliteConnection.ClearPool(any);
    }

    /// <summary>
    /// WAL: readers never wait for the writer. FULL: a commit is on the disk before it is acknowledged. A memory or network file system that
    /// can't do WAL is refused.
    /// </summary>
    public void PrepareToWrite(SqliteConnection connection)
    {
        var journal = connection.ExecuteScalar<string>("PRAGMA journal_mode = WAL");
        if (journal != "wal")
            throw new StorageUnavailableException("io-error", $"This file system keeps no write-ahead log (journal mode {journal}). Use a local disk.");
        Pragma(connection, "PRAGMA synchronous = FULL");
        Pragma(connection, "PRAGMA trusted_schema = OFF");
        // What is erased is overwritten, and not only let go.
        Pragma(connection, "PRAGMA secure_delete = ON");
        if (options.MaxPages is { } pages)
            Pragma(connection, FormattableString.Invariant($"PRAGMA max_page_count = {pages}"));
    }

    /// <summary>A connection of its own to some file, for reading only.</summary>
    public static SqliteConnection OpenCopy(string path) => OpenAny(Text(path, SqliteOpenMode.ReadOnly, pooling: false));

    private static string Text(string path, SqliteOpenMode mode, bool pooling) => new SqliteConnectionStringBuilder
    {
        DataSource = path,
        Mode = mode,
        Pooling = pooling,
        ForeignKeys = true,
        DefaultTimeout = 1,
    }.ToString();

    private static SqliteConnection OpenAny(string text)
    {
        var connection = new SqliteConnection(text);
        connection.Open();
        return connection;
    }

    private SqliteConnection Open(string text)
    {
        var connection = OpenAny(text);
        Pragma(connection, FormattableString.Invariant($"PRAGMA busy_timeout = {(long)options.BusyTimeout.TotalMilliseconds}"));
        return connection;
    }

    private static void Pragma(SqliteConnection connection, string text) => connection.Execute(text);
}
