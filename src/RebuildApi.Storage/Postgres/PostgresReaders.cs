using System.Data;
using System.Data.Common;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>Reads on connections of the pool. Each reading sees one moment and waits for no writer; one that a lost connection cut off is made again once.</summary>
internal sealed class PostgresReaders(NpgsqlDataSource source)
{
    public async ValueTask<T> Read<T>(Func<DbConnection, T> query, CancellationToken cancellation)
    {
        try
        {
            return await Once(query, cancellation);
        }
        catch (Exception e) when (PostgresFaults.IsBroken(e))
        {
            // After a restart of the server every connection of the pool is dead.
            source.Clear();
            return await Again(query, cancellation);
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException why)
        {
            throw why;
        }
    }

    private async ValueTask<T> Again<T>(Func<DbConnection, T> query, CancellationToken cancellation)
    {
        try
        {
            return await Once(query, cancellation);
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException why)
        {
            throw why;
        }
    }

    private async ValueTask<T> Once<T>(Func<DbConnection, T> query, CancellationToken cancellation)
    {
        await using var connection = await source.OpenConnectionAsync(cancellation);
        await using var moment = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellation);
        var answer = query(connection);
        await moment.CommitAsync(CancellationToken.None);
        return answer;
    }
}
