using System.Threading.RateLimiting;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Access;

/// <summary>Slows who tries tokens that were never issued, address by address. A right token is never slowed by it.</summary>
public sealed class WrongTokens : IDisposable
{
    /// <summary>How many may be tried at once.</summary>
    public const int AtOnce = 20;

    /// <summary>One more may be tried each so often.</summary>
    public static readonly TimeSpan Each = TimeSpan.FromSeconds(5);

    private readonly PartitionedRateLimiter<string> _limiter = PartitionedRateLimiter.Create<string, string>(
        address => RateLimitPartition.GetTokenBucketLimiter(address, _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = AtOnce,
            TokensPerPeriod = 1,
            ReplenishmentPeriod = Each,
        }));

    /// <summary>Counts one wrong token.</summary>
    /// <exception cref="ProblemException">Too many came from this address.</exception>
    public void Count(HttpContext http)
    {
        using var lease = _limiter.AttemptAcquire(ClientAddress.Of(http));
        if (!lease.IsAcquired)
            throw TooMany.Of(lease);
    }

    /// <inheritdoc/>
    public void Dispose() => _limiter.Dispose();
}
