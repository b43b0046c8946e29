using System.Data.Common;

namespace RebuildApi.Storage.Sql;

/// <summary>The writer's transaction, and in it one savepoint for the change that is being made. Each engine has its own words for it.</summary>
internal interface IWriteTransaction
{
    /// <summary>The connection that it is on.</summary>
    DbConnection Connection { get; }

    /// <summary>Whether one is open; a full disk or a lost connection can end it from within.</summary>
    bool IsOpen { get; }

    /// <summary>Begins, and keeps every other writer of this shop waiting until the end.</summary>
    void Begin();

    void BeginChange();

    void KeepChange();

    void UndoChange();

    void Commit();

    /// <summary>Lets what was erased go from the engine's log too, as far as the engine can; after a commit.</summary>
    void EmptyLog();

    /// <summary>Ends it without keeping anything; nothing happens when none is open.</summary>
    void Abandon();

    /// <summary>A fault of the engine in the store's words; the exception itself when it is none.</summary>
    Exception Translate(Exception fault);
}
