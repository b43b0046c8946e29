namespace RebuildApi.Storage.Sql;

/// <summary>
/// Runs several changes in one transaction, each in a savepoint of its own, and commits once: one wait for the disk serves all of them.
/// No caller hears anything before the commit.
/// </summary>
internal sealed class GroupCommit : IGroupWriter
{
    private readonly string _shop;
    private readonly IWriteTransaction _transaction;
    private readonly Statements _statements;
    private readonly ChainWriter _chain;
    private readonly IdempotencyKeys _keys;

    public GroupCommit(IWriteTransaction transaction, StoreOptions options)
    {
        _shop = options.Shop;
        _transaction = transaction;
        _statements = new Statements(transaction.Connection);
        _chain = new ChainWriter(_statements, options.Shop, options.Time);
        _keys = new IdempotencyKeys(_statements, options.Shop, options.Time, options.KeepKeys);
    }

    /// <inheritdoc/>
    public long? Run(IReadOnlyList<PendingChange> group)
    {
        try
        {
            _transaction.Begin();
            Apply(group);
            _transaction.Commit();
        }
        catch (Exception e)
        {
            Lose(group, _transaction.Translate(e));
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
            change.Refused(_transaction.Translate(e));
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
