using System.Collections.Immutable;
using System.Data.Common;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Npgsql;
using RebuildApi.Storage.Postgres;
using RebuildApi.Storage.Sql;
using RebuildApi.Storage.Sqlite;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

/// <summary>
/// A store in a folder of its own, or in a schema of its own when the tests are run against PostgreSQL (<c>REBUILD_TEST_POSTGRES</c>); gone at the end of the test.
/// </summary>
public sealed class TempStore : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("store-test-");
    private readonly List<TempSchema> _schemas = [];
    private IStore? _store;

    public TempStore() => Options = Elsewhere("shop.db");

    public FakeTimeProvider Time { get; } = new(SnapshotBuilder.Noon);

    public StoreOptions Options { get; set; }

    public IStore Store => _store ??= Stores.Open(Options);

    public string PathTo(string name) => System.IO.Path.Combine(_folder.FullName, name);

    /// <summary>Another place of the same engine that is empty.</summary>
    public StoreOptions Elsewhere(string name)
    {
        if (TempSchema.WhereAsked() is { } schema)
            _schemas.Add(schema);
        return new StoreOptions(PathTo(name), Time) { Database = _schemas.LastOrDefault()?.Connection };
    }

    /// <summary>The same place as an earlier edition of the program made it.</summary>
    public IStore OpenOlder(int upTo) => _schemas.Count == 0
        ? SqliteStore.Open(Options, Migration.Shipped(Migration.Sqlite)[..upTo])
        : PostgresStore.Open(Options, Migration.Shipped(Migration.Postgres)[..upTo]);

    /// <summary>One change by one person without a key.</summary>
    public Task<StoredAnswer> Write(Action<IWriteSession> work) => Write(Requests.Plain, work);

    public Task<StoredAnswer> Write(WriteRequest request, Action<IWriteSession> work) => Store.Write(
        request,
        session =>
        {
            work(session);
            return Requests.Ok("done");
        },
        CancellationToken.None);

    public async Task Close()
    {
        if (_store is not null)
            await _store.DisposeAsync();
        _store = null;
    }

    /// <summary>Does something to the records behind the store's back, in the words of the engine in the process.</summary>
    public void Meddle(string sql)
    {
        using var connection = Open();
        connection.Execute(_schemas.Count == 0 ? sql : TempSchema.Translated(sql));
    }

    public IReadOnlyList<string> Ask(string sql)
    {
        using var connection = Open();
        return connection.Query<string>(_schemas.Count == 0 ? sql : TempSchema.Translated(sql)).AsList();
    }

    /// <summary>The same over a connection as the service opens it; the answer to the last of several questions.</summary>
    public IReadOnlyList<string> AskAsService(params string[] questions)
    {
        using var connection = PostgresAddress.Own(Options);
        connection.Open();
        foreach (var sql in questions[..^1])
            connection.Execute(sql);
        return connection.Query<string>(questions[^1]).AsList();
    }

    /// <summary>How the engine would answer a question, step by step.</summary>
    public IReadOnlyList<string> Plan(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Options.Path};Pooling=False");
        return connection.Query<(long, long, long, string Detail)>("EXPLAIN QUERY PLAN " + sql).Select(step => step.Detail).AsList();
    }

    public async ValueTask DisposeAsync()
    {
        await Close();
        foreach (var schema in _schemas)
            schema.Dispose();
        _folder.Delete(recursive: true);
    }

    /// <summary>A connection behind the store's back.</summary>
    public DbConnection Open()
    {
        DbConnection connection = _schemas.Count == 0
            ? new SqliteConnection($"Data Source={Options.Path};Pooling=False")
            : new NpgsqlConnection(_schemas[0].Master);
        connection.Open();
        return connection;
    }
}

/// <summary>Requests and answers for tests.</summary>
public static class Requests
{
    public static readonly WriteRequest Plain = new("bench-1", "POST /v1/units", null, "aa", DryRun: false);

    public static WriteRequest Keyed(string key, string sha256 = "aa") => Plain with { IdempotencyKey = key, RequestSha256 = sha256 };

    public static StoredAnswer Ok(string body) => new(
        200, "text/plain", Encoding.UTF8.GetBytes(body), ImmutableSortedDictionary<string, string>.Empty.Add("ETag", "\"1\""));

    public static string Text(this StoredAnswer answer) => Encoding.UTF8.GetString(answer.Body.Span);
}
