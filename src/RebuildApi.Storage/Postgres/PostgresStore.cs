using System.Collections.Immutable;
using System.Data.Common;
using Dapper;
using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>A shop in a PostgreSQL database, which several copies of the service may share, and several shops.</summary>
public sealed class PostgresStore : SqlStore
{
    private static readonly Version Oldest = new(15, 0);

    private readonly StoreOptions _options;
    private readonly NpgsqlDataSource _source;
    private readonly PostgresReaders _readers;
    private readonly PostgresListener _listener;
    private readonly ShopLock _shop;

    private PostgresStore(StoreOptions options, NpgsqlDataSource source, ShopLock shop, Version engine, Announcement announcement)
        : base(options, new PostgresWriter(source, options, shop), announcement)
    {
        _options = options;
        _source = source;
        _shop = shop;
        _readers = new PostgresReaders(source);
        _listener = new PostgresListener(options, shop, announcement);
        Engine = $"PostgreSQL {engine}";
    }

    private protected override string Engine { get; }

    /// <summary>Connects, and brings an empty or older database to the schema of this program; other copies wait meanwhile.</summary>
    /// <exception cref="StorageUnavailableException">It can't be reached or must not be used; the code and the words say why.</exception>
    public static PostgresStore Open(StoreOptions options) => Open(options, Migration.Shipped(Migration.Postgres));

    /// <inheritdoc cref="Open(StoreOptions)"/>
    internal static PostgresStore Open(StoreOptions options, ImmutableArray<Migration> steps)
    {
        var source = PostgresAddress.Source(options);
        try
        {
            using var connection = source.OpenConnection();
            Prepare(connection, options, steps);
            var shop = new ShopLock(PostgresCatalogue.SchemaOf(connection), options.Shop);
            return new PostgresStore(options, source, shop, connection.PostgreSqlVersion, new Announcement(ChainHead.Read(connection, options.Shop).Sequence));
        }
        catch (Exception e)
        {
            source.Dispose();
            if (PostgresFaults.Translate(e) is StorageUnavailableException why && why != e)
                throw why;
            throw;
        }
    }

    /// <inheritdoc/>
    public override bool IsShared => true;

    /// <inheritdoc/>
    public override ValueTask<TimeSpan> CountTry(string who, TryLimit limit, CancellationToken cancellation) => new PostgresTries(_source, _options).Add(who, limit, cancellation);

    /// <inheritdoc/>
    public override Task<IDuty> TakeUp(string duty, CancellationToken cancellation) => PostgresDuty.Await(_options, _shop.Duty(duty), cancellation);

    /// <summary>Copies the shop into a file of the other engine, so that a backup is one file that can be opened and checked anywhere.</summary>
    public override ValueTask<BackupReport> Backup(string path, CancellationToken cancellation) => new PostgresCopy(_options, VerifyChain).Make(path, cancellation);

    /// <summary>Refuses whatever must not be worked on, and brings the schema up to date.</summary>
    internal static void Prepare(NpgsqlConnection connection, StoreOptions options, ImmutableArray<Migration> steps)
    {
        if (connection.PostgreSqlVersion < Oldest)
            throw new StorageUnavailableException("engine-too-old", $"PostgreSQL {connection.PostgreSqlVersion} is too old; {Oldest} or newer is needed.");
        PostgresFence.Require(connection);
        new PostgresSchema(connection, options.Time, steps).Prepare(options.ReadOnly);
        if (connection.ExecuteScalar<string?>("SELECT file FROM importing WHERE shop = @shop", new { shop = options.Shop }) is not null)
            throw new StorageUnavailableException("importing", "The shop is being taken over from a file, or that was cut off. Run import again; it goes on where it was.");
    }

    private protected override void Want(DbConnection connection, string shop) => PostgresOpening.Want((NpgsqlConnection)connection, shop);

    private protected override ValueTask<T> Read<T>(Func<DbConnection, T> query, CancellationToken cancellation) => _readers.Read(query, cancellation);

    private protected override async ValueTask Close()
    {
        await _listener.DisposeAsync();
        await _source.DisposeAsync();
    }
}
