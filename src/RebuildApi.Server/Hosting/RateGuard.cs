using System.Collections.Immutable;
using System.Globalization;
using System.Threading.RateLimiting;
using Microsoft.Extensions.Options;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server;

/// <summary>Answers 429 with Retry-After to a client that asks too often; off unless a limit is set.</summary>
public sealed class RateGuard(RequestDelegate next, IOptions<ServerOptions> options) : IDisposable
{
    private readonly PartitionedRateLimiter<string>? _limiter = options.Value.RequestsPerMinute <= 0
        ? null
        : PartitionedRateLimiter.Create<string, string>(client => RateLimitPartition.GetFixedWindowLimiter(client, _ => new FixedWindowRateLimiterOptions
        {
            PermitLimit = options.Value.RequestsPerMinute,
            Window = TimeSpan.FromMinutes(1),
        }));

    /// <summary>Runs the rest of the pipeline while the client is within its limit.</summary>
    public async Task InvokeAsync(HttpContext http)
    {
        if (_limiter is null)
        {
            await next(http);
            return;
        }

        using var lease = await _limiter.AcquireAsync(http.Connection.RemoteIpAddress?.ToString() ?? "", 1, http.RequestAborted);
        if (!lease.IsAcquired)
            throw TooMany(lease);
        await next(http);
    }

    /// <inheritdoc/>
    public void Dispose() => _limiter?.Dispose();

    private static ProblemException TooMany(RateLimitLease lease)
    {
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? Math.Max(1, (int)Math.Ceiling(after.TotalSeconds)) : 60;
        var seconds = wait.ToString(CultureInfo.InvariantCulture);
        return new ProblemException(Problems.TooManyRequests, $"Ask again in {seconds} seconds.")
        {
            Headers = ImmutableSortedDictionary<string, string>.Empty.Add("Retry-After", seconds),
        };
    }
}
