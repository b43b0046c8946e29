using System.Data.Common;
using Microsoft.Data.Sqlite;
using Polly;
using Polly.Retry;
using RebuildApi.Storage.Sql;
using SQLitePCL;

namespace RebuildApi.Storage.Sqlite;

/// <summary>
/// The writer's transaction in a file. Spoken to the engine directly: the provider would try a busy file again by itself, for at least a second,
/// and we want to say for how long.
/// </summary>
internal sealed class SqliteWriteTransaction(SqliteConnection connection) : IWriteTransaction
{
    // Waiting is tried again only for the beginning of a transaction, which has no effects.
    private readonly ResiliencePipeline _patience = new ResiliencePipelineBuilder()
        .AddRetry(new RetryStrategyOptions
        {
            ShouldHandle = new PredicateBuilder().Handle<SqliteException>(SqliteFaults.IsBusy),
            MaxRetryAttempts = 4,
            Delay = TimeSpan.FromMilliseconds(20),
            BackoffType = DelayBackoffType.Exponential,
            UseJitter = true,
        })
        .Build();

    public DbConnection Connection => connection;

    /// <inheritdoc/>
    public bool IsOpen => raw.sqlite3_get_autocommit(connection.Handle) == 0;

    /// <summary>Takes the write lock at once, so that it can't be lost to another connection halfway.</summary>
    public void Begin() => _patience.Execute(() => Say("BEGIN IMMEDIATE"));

    public void BeginChange() => Say("SAVEPOINT change");

    public void KeepChange() => Say("RELEASE change");

    public void UndoChange() => Say("ROLLBACK TO change; RELEASE change");

    public void Commit() => Say("COMMIT");

    /// <summary>Empties the write-ahead log into the database. Nothing is lost when a reader is in the way: it stays as long as that.</summary>
    public void EmptyLog() => raw.sqlite3_exec(connection.Handle, "PRAGMA wal_checkpoint(TRUNCATE)");

    public void Abandon()
    {
        if (IsOpen)
            Say("ROLLBACK");
    }

    public Exception Translate(Exception fault) => SqliteFaults.Translate(fault);

    private void Say(string words) => SqliteException.ThrowExceptionForRC(raw.sqlite3_exec(connection.Handle, words), connection.Handle);
}
