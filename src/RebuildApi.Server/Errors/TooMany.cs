using System.Collections.Immutable;
using System.Globalization;
using System.Threading.RateLimiting;

namespace RebuildApi.Server.Errors;

/// <summary>429 with Retry-After.</summary>
public static class TooMany
{
    /// <summary>The problem for a lease that was not given.</summary>
    public static ProblemException Of(RateLimitLease lease) =>
        Of(lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromMinutes(1));

    /// <summary>The problem for who must wait so long.</summary>
    public static ProblemException Of(TimeSpan wait)
    {
        var seconds = Math.Max(1, (int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        return new ProblemException(Problems.TooManyRequests, $"Ask again in {seconds} seconds.")
        {
            Headers = ImmutableSortedDictionary<string, string>.Empty.Add("Retry-After", seconds),
        };
    }
}
