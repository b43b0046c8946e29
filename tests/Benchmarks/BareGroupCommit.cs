using System.Threading.Channels;
using Dapper;
using Microsoft.Data.Sqlite;
using RebuildApi.Storage;
using RebuildApi.Storage.Sqlite;

namespace RebuildApi.Benchmarks;

/// <summary>The same rows written by the plainest grouped commit: no checks, no chain, no serialising, ready-made texts.</summary>
internal sealed class BareGroupCommit : IReadingSink
{
    private const int GroupSize = 256;
    private static readonly string Body = new('x', 330);
    private static readonly string Hash = new('h', 64);
    private static readonly byte[] Answer = new byte[100];

    private readonly Channel<(string Id, TaskCompletionSource Done)> _queue = Channel.CreateUnbounded<(string, TaskCompletionSource)>();
    private readonly SqliteConnection _connection;
    private readonly Task _loop;
    private long _sequence = 1;

    private BareGroupCommit(SqliteConnection connection)
    {
        _connection = connection;
        _loop = Task.Run(Loop);
    }

    public static async Task<IReadingSink> Open(string path)
    {
        // The store makes the tables, so that both write into the same ones.
        await SqliteStore.Open(new StoreOptions(path, TimeProvider.System)).DisposeAsync();
        var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        await connection.OpenAsync();
        await connection.ExecuteAsync(
            """
            PRAGMA synchronous = FULL;
            PRAGMA foreign_keys = ON;
            INSERT INTO entry (shop, sequence, at, actor, operation, kind, unit, id, body, previous, hash) VALUES ('main', 1, 't', 'a', 'o', 'unit', 'u1', 'u1', '{}', '', 'h');
            INSERT INTO unit (shop, id, stage, version, entry) VALUES ('main', 'u1', 'teardown', 1, 1);
            INSERT INTO component (shop, id, revision, unit, entry) VALUES ('main', 'c1', 1, 'u1', 1);
            """);
        return new BareGroupCommit(connection);
    }

    public async Task Add(string id)
    {
        var done = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await _queue.Writer.WriteAsync((id, done));
        await done.Task;
    }

    public async ValueTask DisposeAsync()
    {
        _queue.Writer.Complete();
        await _loop;
        await _connection.DisposeAsync();
    }

    private async Task Loop()
    {
        while (await _queue.Reader.WaitToReadAsync())
            CommitWaiting();
    }

    private void CommitWaiting()
    {
        var group = new List<(string Id, TaskCompletionSource Done)>();
        while (group.Count < GroupSize && _queue.Reader.TryRead(out var waiting))
            group.Add(waiting);
        try
        {
            _connection.Execute("BEGIN IMMEDIATE");
            foreach (var (id, _) in group)
                Insert(id);
            _connection.Execute("COMMIT");
        }
        catch (SqliteException e)
        {
            group.ForEach(waiting => waiting.Done.SetException(e));
            return;
        }

        group.ForEach(waiting => waiting.Done.SetResult());
    }

    private void Insert(string id)
    {
        var row = new { sequence = ++_sequence, id, Body, Hash, Answer };
        _connection.Execute(
            """
            INSERT INTO entry (shop, sequence, at, actor, operation, kind, unit, id, body, previous, hash)
            VALUES ('main', @sequence, '2026-03-02T12:00:00.0000000Z', 'bench-1', 'POST /v1/units/u1/measurements',
                'measurement', 'u1', @id, @Body, @Hash, @Hash)
            """,
            row);
        _connection.Execute(
            """
            INSERT INTO measurement (shop, id, unit, component, revision, characteristic, supersedes, entry, instrument)
            VALUES ('main', @id, 'u1', 'c1', 1, 'width', NULL, @sequence, NULL)
            """,
            row);
        _connection.Execute("UPDATE unit SET version = version + 1 WHERE shop = 'main' AND id = 'u1'");
        _connection.Execute(
            """
            INSERT INTO idempotency (shop, actor, key, operation, request_sha256, status, content_type, headers, body, created)
            VALUES ('main', 'bench-1', @id, 'POST /v1/units/u1/measurements', @id, 201, '', '{}', @Answer,
                '2026-03-02T12:00:00.0000000Z')
            """,
            row);
    }
}
