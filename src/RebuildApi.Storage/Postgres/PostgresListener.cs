using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Npgsql;
using RebuildApi.Storage.Sql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Hears of what other copies committed. Between what it hears, and whenever it had to connect anew, it looks where the chain ends: a word that was lost
/// delays an event by a look, and loses none.
/// </summary>
internal sealed class PostgresListener : IAsyncDisposable
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);

    private readonly CancellationTokenSource _stop = new();
    private readonly StoreOptions _options;
    private readonly ShopLock _shop;
    private readonly Announcement _announcement;
    private readonly Task _loop;

    public PostgresListener(StoreOptions options, ShopLock shop, Announcement announcement)
    {
        _options = options;
        _shop = shop;
        _announcement = announcement;
        _loop = Task.Run(Loop);
    }

    public async ValueTask DisposeAsync()
    {
        if (_stop.IsCancellationRequested)
            return;
        await _stop.CancelAsync();
        await _loop;
        _stop.Dispose();
    }

    private async Task Loop()
    {
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                await Listen(_stop.Token);
            }
            catch (Exception e) when (e is OperationCanceledException || PostgresFaults.Translate(e) is StorageUnavailableException)
            {
                await Task.Delay(Look, _options.Time, _stop.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
    }

    [SuppressMessage("Security", "CA2100", Justification = "The channel is hexadecimal digits of a hash made here; the statement takes no parameter.")]
    private async Task Listen(CancellationToken stop)
    {
        await using var connection = PostgresAddress.Own(_options);
        await connection.OpenAsync(stop);
        connection.Notification += (_, told) => Hear(told.Payload);
        await using var listen = new NpgsqlCommand($"LISTEN {_shop.Channel}", connection);
        await listen.ExecuteNonQueryAsync(stop);
        while (true)
        {
            _announcement.Announce(ChainHead.Read(connection, _options.Shop).Sequence);
            await connection.WaitAsync(Look, stop);
        }
    }

    private void Hear(string payload)
    {
        if (long.TryParse(payload, NumberStyles.None, CultureInfo.InvariantCulture, out var sequence))
            _announcement.Announce(sequence);
    }
}
