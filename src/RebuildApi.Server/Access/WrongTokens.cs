using System.Threading.RateLimiting;
using RebuildApi.Server.Errors;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>
/// Slows who tries tokens that were never issued, address by address: in this process first, which costs the records nothing, then over all copies of the service.
/// A right token is never slowed by it, and records that can't be reached slow nobody more than this process does.
/// </summary>
public sealed partial class WrongTokens(Func<IStore> store, ILogger<WrongTokens> log) : IDisposable
{
    /// <summary>How many may be tried at once, and when one more.</summary>
    public static readonly TryLimit Limit = new(20, TimeSpan.FromSeconds(5));

    private readonly PartitionedRateLimiter<string> _limiter = PartitionedRateLimiter.Create<string, string>(
        address => RateLimitPartition.GetTokenBucketLimiter(address, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = Limit.AtOnce,
            TokensPerPeriod = 1,
            ReplenishmentPeriod = Limit.Each,
        }));

    /// <summary>Counts one wrong token.</summary>
    /// <exception cref="ProblemException">Too many came from this address.</exception>
    public async ValueTask Count(HttpContext http)
    {
        var address = ClientAddress.Of(http);
        using var lease = _limiter.AttemptAcquire(address);
        if (!lease.IsAcquired)
            throw TooMany.Of(lease);
        if (await OverCopies(address, http.RequestAborted) is var wait && wait > TimeSpan.Zero)
            throw TooMany.Of(wait);
    }

    /// <inheritdoc/>
    public void Dispose() => _limiter.Dispose();

    private async ValueTask<TimeSpan> OverCopies(string address, CancellationToken cancellation)
    {
        try
        {
            return await store().CountTry("wrong-token " + address, Limit, cancellation);
        }
        catch (StorageUnavailableException e)
        {
            LogAlone(log, e.Code);
            return TimeSpan.Zero;
        }
    }

    [LoggerMessage(LogLevel.Warning, "Wrong tokens could not be counted over all copies ({Code}); this one counts for itself")]
    private static partial void LogAlone(ILogger log, string code);
}
