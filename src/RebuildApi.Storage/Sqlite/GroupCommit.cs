using Microsoft.Data.Sqlite;
using Polly;
using Polly.Retry;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Sqlite;

/// <summary>
/// Runs several changes in one transaction, each in a savepoint of its own, and commits once: one wait for the disk serves all of them.
/// No caller hears anything before the commit.
/// </summary>
internal sealed class GroupCommit : IDisposable
{
    private readonly string _shop;
    private readonly WriteTransaction _transaction;
    private readonly Statements _statements;
    private readonly ChainWriter _chain;
    private readonly IdempotencyKeys _keys;

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

    public GroupCommit(SqliteConnection connection, StoreOptions options)
    {
        _shop = options.Shop;
        _transaction = new WriteTransaction(connection);
        _statements = new Statements(connection);
        _chain = new ChainWriter(_statements, options.Shop, options.Time);
        _keys = new IdempotencyKeys(_statements, options.Shop, options.Time, options.KeepKeys);
    }

    /// <summary>Runs and commits a group, and answers each of its callers.</summary>
    /// <returns>The last sequence number when the group was committed, else null.</returns>
    public long? Run(IReadOnlyList<PendingChange> group)
    {
        try
        {
            _patience.Execute(_transaction.Begin);
            Apply(group);
            _transaction.Commit();
        }
        catch (Exception e)
        {
            Lose(group, SqliteFaults.Translate(e));
            return null;
        }

        if (_statements.HasErased)
            Forget();
        foreach (var change in group)
            change.Publish();
        return _chain.Head.Sequence;
    }

    /// <summary>Lets go of the prepared statements; the connection is the caller's.</summary>
    public void Dispose() => _statements.Dispose();

    // What was erased still stands in the log until that is emptied; a reader that is slow may keep it until the next time.
    private void Forget()
    {
        _statements.HasErased = false;
        _transaction.EmptyLog();
    }

    private void Apply(IReadOnlyList<PendingChange> group)
    {
        _chain.Begin();
        _keys.Sweep();
        foreach (var change in group)
        {
            if (change.Begin())
                Apply(change);
        }
    }

    private void Apply(PendingChange change)
    {
        var head = _chain.Head;
        _transaction.BeginChange();
        try
        {
            change.Done(_keys.Recall(change.Request) ?? Perform(change));
            if (change.Request.DryRun)
                Undo(head);
            else
                _transaction.KeepChange();
        }
        catch (Exception e) when (_transaction.IsOpen)
        {
            Undo(head);
            change.Refused(SqliteFaults.Translate(e));
        }
    }

    private StoredAnswer Perform(PendingChange change)
    {
        var answer = change.Work(new WriteSession(_statements, _shop, _chain, change.Request));
        _keys.Keep(change.Request, answer);
        return answer;
    }

    private void Undo(ChainHead head)
    {
        _transaction.UndoChange();
        _chain.Return(head);
    }

    /// <summary>A full disk and the like can end the whole transaction: everyone in it hears so, and nothing of it stays.</summary>
    private void Lose(IReadOnlyList<PendingChange> group, Exception why)
    {
        _transaction.Abandon();
        foreach (var change in group)
            change.Fail(why);
    }
}
