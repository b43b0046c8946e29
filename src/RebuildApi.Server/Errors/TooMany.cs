using System.Collections.Immutable;
using System.Globalization;
using System.Threading.RateLimiting;

namespace RebuildApi.Server.Errors;

/// <summary>429 with Retry-After.</summary>
public static class TooMany
{
    /// <summary>The problem for a lease that was not given.</summary>
    public static ProblemException Of(RateLimitLease lease)
    {
        var wait = lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? Math.Max(1, (int)Math.Ceiling(after.TotalSeconds)) : 60;
        var seconds = wait.ToString(CultureInfo.InvariantCulture);
        return new ProblemException(Problems.TooManyRequests, $"Ask again in {seconds} seconds.")
        {
            Headers = ImmutableSortedDictionary<string, string>.Empty.Add("Retry-After", seconds),
        };
    }
}
