using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace RebuildApi.Storage.Sqlite;

/// <summary>
/// The writer's transaction, and in it one savepoint for the change that is being made. Spoken to the engine directly: the provider would
/// try a busy file again by itself, for at least a second, and we want to say for how long.
/// </summary>
internal sealed class WriteTransaction(SqliteConnection connection)
{
    /// <summary>Whether one is open; a full disk and the like can end it from within.</summary>
    public bool IsOpen => raw.sqlite3_get_autocommit(connection.Handle) == 0;

    /// <summary>Takes the write lock at once, so that it can't be lost to another connection halfway.</summary>
    public void Begin() => Say("BEGIN IMMEDIATE");

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

    private void Say(string words) => SqliteException.ThrowExceptionForRC(raw.sqlite3_exec(connection.Handle, words), connection.Handle);
}
