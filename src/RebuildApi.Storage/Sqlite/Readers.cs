using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace RebuildApi.Storage.Sqlite;

/// <summary>Reads on connections of their own. Each reading sees one moment and waits for no writer.</summary>
internal sealed class Readers(SqliteFile file)
{
    public ValueTask<T> Read<T>(Func<DbConnection, T> query, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return ValueTask.FromResult(Read(query));
    }

    // The engine works in this process and has nothing to await.
    private T Read<T>(Func<DbConnection, T> query)
    {
        try
        {
            using var connection = file.OpenReader();
            using var moment = connection.BeginTransaction(deferred: true);
            return query(connection);
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Translate(e);
        }
    }
}
