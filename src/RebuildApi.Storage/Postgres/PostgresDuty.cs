using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>A duty that is held by a lock of a connection: it is free again the moment the connection ends, however that came.</summary>
internal sealed class PostgresDuty : IDuty
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);

    private readonly NpgsqlConnection _connection;
    private readonly CancellationTokenSource _ended = new();
    private readonly CancellationTokenSource _lost = new();
    private readonly Task _watch;

    private PostgresDuty(NpgsqlConnection connection, TimeProvider time)
    {
        _connection = connection;
        _watch = Watch(time);
    }

    public CancellationToken Lost => _lost.Token;

    /// <summary>Waits until it is free, also while the database can't be reached.</summary>
    public static async Task<IDuty> Await(StoreOptions options, long key, CancellationToken cancellation)
    {
        while (true)
        {
            if (await Try(options, key, cancellation) is { } duty)
                return duty;
            await Task.Delay(Look, options.Time, cancellation);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _ended.CancelAsync();
        await _watch;
        await _connection.DisposeAsync();
        _ended.Dispose();
        _lost.Dispose();
    }

    private static async Task<PostgresDuty?> Try(StoreOptions options, long key, CancellationToken cancellation)
    {
        var connection = PostgresAddress.Own(options);
        try
        {
            await connection.OpenAsync(cancellation);
            await using var command = new NpgsqlCommand("SELECT pg_try_advisory_lock($1)", connection);
            command.Parameters.AddWithValue(key);
            if (await command.ExecuteScalarAsync(cancellation) is true)
                return new PostgresDuty(connection, options.Time);
        }
        catch (Exception e) when (PostgresFaults.Translate(e) is StorageUnavailableException)
        {
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }

        await connection.DisposeAsync();
        return null;
    }

    private async Task Watch(TimeProvider time)
    {
        try
        {
            while (true)
            {
                await Task.Delay(Look, time, _ended.Token);
                await using var command = new NpgsqlCommand("SELECT 1", _connection);
                await command.ExecuteScalarAsync(_ended.Token);
            }
        }
        catch (OperationCanceledException) when (_ended.IsCancellationRequested)
        {
        }
        catch (Exception)
        {
            await _lost.CancelAsync();
        }
    }
}
