using System.Collections.Immutable;
using System.Data.Common;
using Microsoft.Data.Sqlite;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>The shop's database in one SQLite file: one connection that writes, pooled connections that read.</summary>
public sealed class SqliteStore : SqlStore
{
    private readonly SqliteFile _file;
    private readonly SqliteConnection _connection;
    private readonly Readers _readers;

    private SqliteStore(SqliteFile file, SqliteConnection connection)
        : base(
            file.Options,
            new GroupCommit(new SqliteWriteTransaction(connection), file.Options),
            new Announcement(ChainHead.Read(connection, file.Options.Shop).Sequence))
    {
        _file = file;
        _connection = connection;
        _readers = new Readers(file);
    }

    private protected override string Engine => $"SQLite {_connection.ServerVersion}";

    /// <summary>Opens a database, makes it when there is none, and brings it to the schema of this program after a copy of it.</summary>
    /// <exception cref="StorageUnavailableException">It must not or can't be opened; the code and the words say why.</exception>
    public static SqliteStore Open(StoreOptions options) => Open(options, Migration.Shipped(Migration.Sqlite));

    /// <summary>
    /// Puts a copy in the place of a database that no program has open, once the copy has verified. What stood there is kept beside it under
    /// the name <c>.replaced-</c> and the time.
    /// </summary>
    /// <param name="options">Where the database is.</param>
    /// <param name="copy">The copy.</param>
    /// <param name="dryRun">Whether everything is only checked.</param>
    /// <returns>What checking the copy found; nothing was touched unless it is verified.</returns>
    /// <exception cref="StorageUnavailableException"><c>locked</c>: a program has the database open.</exception>
    public static BackupReport Restore(StoreOptions options, string copy, bool dryRun) => new SqliteRestore(options).Restore(copy, dryRun);

    /// <summary>Fills a database that nobody uses yet, at the schema that what fills it fits, and brings it up to date afterwards.</summary>
    internal static T Fill<T>(StoreOptions options, int schema, Func<SqliteConnection, T> fill)
    {
        try
        {
            var (file, steps) = (new SqliteFile(options), Migration.Shipped(Migration.Sqlite));
            using var connection = file.OpenWriter();
            new Schema(connection, options.Time, steps).Check(schema, readOnly: false);
            Prepare(file, connection, [.. steps.Where(s => s.Number <= schema)]);
            var result = fill(connection);
            new Schema(connection, options.Time, steps).Upgrade();
            return result;
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
    }

    /// <inheritdoc cref="Open(StoreOptions)"/>
    internal static SqliteStore Open(StoreOptions options, ImmutableArray<Migration> steps)
    {
        SqliteConnection? connection = null;
        try
        {
            RefuseAfterBrokenRestore(options);
            var file = new SqliteFile(options);
            connection = file.OpenWriter();
            Prepare(file, connection, steps);
            return new SqliteStore(file, connection);
        }
        catch (Exception e)
        {
            connection?.Dispose();
            if (e is SqliteException)
                throw SqliteFaults.Translate(e);
            throw;
        }
    }

    // Between putting the old file aside and the new one in its place there is none: an empty one made there would look like a shop that lost everything.
    private static void RefuseAfterBrokenRestore(StoreOptions options)
    {
        if (!System.IO.File.Exists(options.Path) && System.IO.File.Exists(options.Path + SqliteRestore.Arriving))
            throw new StorageUnavailableException("damaged", $"A restore was cut off: {options.Path} is missing and {options.Path}{SqliteRestore.Arriving} lies beside it. Run restore again.");
    }

    // Everything that can refuse the file comes before anything is changed in it.
    private static void Prepare(SqliteFile file, SqliteConnection connection, ImmutableArray<Migration> steps)
    {
        SqliteVersion.Require(connection);
        FileCheck.Quick(connection);
        var schema = new Schema(connection, file.Options.Time, steps);
        schema.Check(Schema.NumberOf(connection), file.Options.ReadOnly);
        if (file.Options.ReadOnly)
            return;
        file.PrepareToWrite(connection);
        schema.Upgrade();
    }

    /// <inheritdoc/>
    public override bool IsShared => false;

    /// <summary>One process has the file, so every duty is its own.</summary>
    public override Task<IDuty> TakeUp(string duty, CancellationToken cancellation) => Task.FromResult<IDuty>(OwnDuty.Always);

    /// <inheritdoc/>
    public override ValueTask<BackupReport> Backup(string path, CancellationToken cancellation)
    {
        using var connection = _file.OpenReader();
        return ValueTask.FromResult(new SqliteCopy(_file.Options.Shop).Make(connection, path, cancellation));
    }

    private protected override ValueTask<T> Read<T>(Func<DbConnection, T> query, CancellationToken cancellation) => _readers.Read(query, cancellation);

    private protected override async ValueTask Close()
    {
        await _connection.DisposeAsync();
        _file.Close();
    }
}
