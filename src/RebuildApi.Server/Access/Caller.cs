using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>Who asks: the name of the token that came, which goes into the chain, and what it may do.</summary>
/// <param name="Name">Name of the token.</param>
/// <param name="Scope">What it may do.</param>
/// <param name="Expires">From when it no longer counts.</param>
public sealed record Caller(string Name, Scope Scope, DateTimeOffset? Expires)
{
    /// <summary>Who asks when no tokens are asked for.</summary>
    public static Caller ThisMachine { get; } = new("local", Scope.Administrator, null);

    /// <summary>The name for who came without a token to an address that is open to everybody; it never stands in the chain.</summary>
    public const string Nobody = "nobody";

    /// <summary>Who asks; null when nobody is known.</summary>
    public static Caller? Of(HttpContext http) => http.Features.Get<Admission>()?.Caller;

    /// <summary>The name for the chain.</summary>
    public static string NameOf(HttpContext http) => Of(http)?.Name ?? Nobody;
}

/// <summary>What came of looking at a request's token.</summary>
/// <param name="Caller">Who asks; null when nobody is known.</param>
/// <param name="Fault">What is wrong with the token; null when it is good or none came.</param>
public sealed record Admission(Caller? Caller, string? Fault = null)
{
    /// <summary>No token came.</summary>
    public static Admission NoToken { get; } = new(null, null);

    /// <summary>Why nobody could look; null when somebody did.</summary>
    public StorageUnavailableException? Unavailable { get; init; }

    /// <summary>Whether the token is one that was never issued here.</summary>
    public bool IsUnknown { get; init; }
}
