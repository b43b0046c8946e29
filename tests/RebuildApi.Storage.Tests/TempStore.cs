using System.Collections.Immutable;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Storage.Sqlite;
using RebuildApi.TestKit;

namespace RebuildApi.Storage.Tests;

/// <summary>A store in a folder of its own, gone at the end of the test.</summary>
public sealed class TempStore : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("store-test-");
    private SqliteStore? _store;

    public TempStore() => Options = new StoreOptions(System.IO.Path.Combine(_folder.FullName, "shop.db"), Time);

    public FakeTimeProvider Time { get; } = new(SnapshotBuilder.Noon);

    public StoreOptions Options { get; set; }

    public SqliteStore Store => _store ??= SqliteStore.Open(Options);

    public string PathTo(string name) => System.IO.Path.Combine(_folder.FullName, name);

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

    /// <summary>Does something to the file behind the store's back.</summary>
    public void Meddle(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Options.Path};Pooling=False");
        connection.Open();
        connection.Execute(sql);
    }

    public IReadOnlyList<string> Ask(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Options.Path};Pooling=False");
        return connection.Query<string>(sql).AsList();
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
        _folder.Delete(recursive: true);
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
