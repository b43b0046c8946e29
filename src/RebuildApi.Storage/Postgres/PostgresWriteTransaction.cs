using System.Data;
using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// The writer's transaction. It holds the shop's lock to its end, so that over all copies one writer follows the other and the chain has no gap; what it
/// reads after having the lock is what the one before committed.
/// </summary>
internal sealed class PostgresWriteTransaction(NpgsqlConnection connection, ShopLock shop) : IWriteTransaction
{
    private readonly string _begin = FormattableString.Invariant($"BEGIN; SELECT pg_advisory_xact_lock({shop.Writing})");
    private bool _begun;

    public DbConnection Connection => connection;

    /// <inheritdoc/>
    public bool IsOpen => _begun && connection.State == ConnectionState.Open;

    /// <summary>Begins; nothing happens when it has begun already.</summary>
    public void Begin()
    {
        if (IsOpen)
            return;
        _begun = true;
        Say(_begin);
    }

    public void BeginChange() => Say("SAVEPOINT change");

    public void KeepChange() => Say("RELEASE SAVEPOINT change");

    public void UndoChange() => Say("ROLLBACK TO SAVEPOINT change; RELEASE SAVEPOINT change");

    public void Commit()
    {
        Say("COMMIT");
        _begun = false;
    }

    /// <summary>The log belongs to the server, which reuses it, and its vacuum clears what was let go; neither is done from here.</summary>
    public void EmptyLog()
    {
    }

    /// <inheritdoc/>
    public void Abandon()
    {
        try
        {
            if (IsOpen)
                Say("ROLLBACK");
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException)
        {
            // The connection is gone, and its transaction with it.
        }

        _begun = false;
    }

    public Exception Translate(Exception fault) => PostgresFaults.Translate(fault);

    [SuppressMessage("Security", "CA2100", Justification = "Every text is made of constants and a number of this assembly.")]
    private void Say(string words)
    {
        using var command = new NpgsqlCommand(words, connection);
        command.ExecuteNonQuery();
    }
}
