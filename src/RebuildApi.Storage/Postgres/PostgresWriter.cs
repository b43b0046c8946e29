using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Carries groups through over one connection, and finds another one by itself when that is lost. What was under way then is not acknowledged; what had not
/// begun is tried once more.
/// </summary>
internal sealed class PostgresWriter(NpgsqlDataSource source, StoreOptions options, ShopLock shop) : IGroupWriter
{
    private Session? _session;

    /// <inheritdoc/>
    public long? Run(IReadOnlyList<PendingChange> group)
    {
        Session session;
        try
        {
            session = Begun();
        }
        catch (Exception e)
        {
            var why = PostgresFaults.Translate(e);
            foreach (var change in group)
                change.Fail(why);
            return null;
        }

        var sequence = session.Commit.Run(group);
        if (sequence is null)
            Drop();
        else
            Tell(session, sequence.Value);
        return sequence;
    }

    public void Dispose() => Drop();

    private Session Begun()
    {
        try
        {
            return Begin();
        }
        catch (Exception e) when (PostgresFaults.IsBroken(e))
        {
            return Begin();
        }
    }

    private Session Begin()
    {
        try
        {
            _session ??= Session.Open(source, options, shop);
            _session.Transaction.Begin();
            return _session;
        }
        catch
        {
            Drop();
            throw;
        }
    }

    // Apart from the commit itself: a commit that tells keeps every other one that tells waiting, over all shops, until it is on the disk. Should it not
    // arrive, the listeners look by themselves before long.
    private void Tell(Session session, long sequence)
    {
        try
        {
            using var command = new NpgsqlCommand("SELECT pg_notify($1, $2)", session.Connection);
            command.Parameters.AddWithValue(shop.Channel);
            command.Parameters.AddWithValue(FormattableString.Invariant($"{sequence}"));
            command.ExecuteNonQuery();
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException)
        {
            Drop();
        }
    }

    private void Drop()
    {
        _session?.Dispose();
        _session = null;
    }

    /// <summary>One connection with everything that is bound to it.</summary>
    private sealed record Session(NpgsqlConnection Connection, PostgresWriteTransaction Transaction, GroupCommit Commit) : IDisposable
    {
        public static Session Open(NpgsqlDataSource source, StoreOptions options, ShopLock shop)
        {
            var connection = source.OpenConnection();
            var transaction = new PostgresWriteTransaction(connection, shop);
            return new Session(connection, transaction, new GroupCommit(transaction, options));
        }

        public void Dispose()
        {
            Commit.Dispose();
            Connection.Dispose();
        }
    }
}
