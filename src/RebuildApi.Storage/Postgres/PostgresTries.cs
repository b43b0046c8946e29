using System.Security.Cryptography;
using System.Text;
using Dapper;
using Npgsql;

namespace RebuildApi.Storage.Postgres;

/// <summary>
/// Counts tries over all copies. Each adds its time to one number, when the last is forgotten; a try that would lead beyond what is allowed at once adds nothing
/// (the leaky bucket as ITU-T I.371 has it, annex A: generic cell rate algorithm, virtual scheduling). Of who tried only a hash stands there.
/// </summary>
internal sealed class PostgresTries(NpgsqlDataSource source, StoreOptions options)
{
    private const string Count =
        """
        INSERT INTO tries AS t (shop, who, until) VALUES (@shop, @who, @now + @each) ON CONFLICT (shop, who) DO UPDATE
        SET until = GREATEST(t.until, @now) + @each WHERE t.until - @now <= @most RETURNING until
        """;

    private const string Stands = "SELECT until FROM tries WHERE shop = @shop AND who = @who";

    private const string Forget = "DELETE FROM tries WHERE shop = @shop AND until < @now";

    /// <summary>Counts one; says how long it is until one more may be.</summary>
    public async ValueTask<TimeSpan> Add(string who, TryLimit limit, CancellationToken cancellation)
    {
        try
        {
            await using var connection = await source.OpenConnectionAsync(cancellation);
            return await Add(connection, who, limit);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            throw PostgresFaults.Translate(e) as StorageUnavailableException ?? new StorageUnavailableException("io-error", "Tries can't be counted.", e);
        }
    }

    private async Task<TimeSpan> Add(NpgsqlConnection connection, string who, TryLimit limit)
    {
        var each = (long)limit.Each.TotalMilliseconds;
        var values = new { shop = options.Shop, who = HashOf(who), now = options.Time.GetUtcNow().ToUnixTimeMilliseconds(), each, most = (limit.AtOnce - 1) * each };
        // Whatever is over is let go first, so that no more stands there than was tried within the time that a try counts.
        await connection.ExecuteAsync(Forget, values);
        if (await connection.ExecuteScalarAsync<long?>(Count, values) is not null)
            return TimeSpan.Zero;
        var until = await connection.ExecuteScalarAsync<long?>(Stands, values) ?? values.now;
        return TimeSpan.FromMilliseconds(Math.Max(0, until - values.now - values.most));
    }

    private string HashOf(string who) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{options.Shop}\n{who}")));
}
