using System.Threading.RateLimiting;
using Microsoft.Extensions.Options;
using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server;

/// <summary>
/// Answers 429 with Retry-After to a client that asks too often: each token from each address by itself, and each address without one. Unless a limit is
/// set, this machine has none and others have one that only a program gone wild reaches.
/// </summary>
public sealed class RateGuard(RequestDelegate next, IOptions<ServerOptions> options) : IDisposable
{
    private readonly PartitionedRateLimiter<string> _limiter = PartitionedRateLimiter.Create<string, string>(
        client => RateLimitPartition.GetFixedWindowLimiter(client, _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = options.Value.RequestsPerMinute ?? ServerOptions.RequestsPerMinuteOfOthers,
            Window = TimeSpan.FromMinutes(1),
        }));

    /// <summary>Runs the rest of the pipeline while the client is within its limit.</summary>
    public async Task InvokeAsync(HttpContext http)
    {
        if (IsFree(http))
        {
            await next(http);
            return;
        }

        using var lease = await _limiter.AcquireAsync($"{Caller.NameOf(http)}@{ClientAddress.Of(http)}", 1, http.RequestAborted);
        if (!lease.IsAcquired)
            throw TooMany.Of(lease);
        await next(http);
    }

    /// <inheritdoc/>
    public void Dispose() => _limiter.Dispose();

    private bool IsFree(HttpContext http) => options.Value.RequestsPerMinute is { } most ? most <= 0 : ClientAddress.IsThisMachine(http);
}
