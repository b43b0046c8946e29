using RebuildApi.Server.Access;
using RebuildApi.Server.Requests;
using RebuildApi.Storage;

namespace RebuildApi.Server.Wire;

/// <summary>A token as the list shows it; its secret is shown nowhere.</summary>
/// <param name="Name">Its name, which stands in the records as the one who asked.</param>
/// <param name="Scope">What it may do.</param>
/// <param name="State">Whether it counts: <c>stands</c>, <c>expired</c> or <c>revoked</c>.</param>
/// <param name="Issued">When it was issued, UTC.</param>
/// <param name="IssuedBy">The token that asked for it, or <c>console</c>.</param>
/// <param name="Expires">From when it no longer counts; not there when it never expires.</param>
/// <param name="LastUsed">When it was last used, to the minute or so; not there when it never was.</param>
/// <param name="Revoked">When it was taken back.</param>
/// <param name="RevokedBy">The token that took it back, or <c>console</c>.</param>
public sealed record TokenWire(
    string Name,
    string Scope,
    string State,
    DateTimeOffset Issued,
    string IssuedBy,
    DateTimeOffset? Expires,
    DateTimeOffset? LastUsed,
    DateTimeOffset? Revoked,
    string? RevokedBy)
{
    /// <summary>From the record.</summary>
    public static TokenWire From(AccessToken token, DateTimeOffset? lastUsed, DateTimeOffset now) => new(
        token.Name, token.Scope, token.Revoked is not null ? "revoked" : token.CountsAt(now) ? "stands" : "expired",
        token.Issued, token.IssuedBy, token.Expires, lastUsed, token.Revoked, token.RevokedBy);
}

/// <summary>A token that was issued.</summary>
/// <param name="Token">The token.</param>
/// <param name="Secret">What to show with each request, in this one answer only: not there in a dry run, nor when the answer is given again for its idempotency key.</param>
/// <param name="Note">What to do with it.</param>
public sealed record IssuedTokenWire(TokenWire Token, string? Secret, string Note);

/// <summary>What token is wanted.</summary>
/// <param name="Name">Its name: the bench, the program or the person that gets it. A name is never given twice.</param>
/// <param name="Scope">What it may do; each scope includes those before it.</param>
/// <param name="Expires">From when it no longer counts; never when it is left out.</param>
public sealed record TokenRequest([Id] string Name, Scope Scope, DateTimeOffset? Expires = null);

/// <summary>Who asks, and what they may do.</summary>
/// <param name="Name">Name of the token; <c>local</c> where no tokens are asked for.</param>
/// <param name="Scope">What it may do.</param>
/// <param name="May">In words, with what the scopes before it may.</param>
/// <param name="Expires">From when it no longer counts; not there when it never expires.</param>
public sealed record CallerWire(string Name, string Scope, IReadOnlyList<string> May, DateTimeOffset? Expires)
{
    /// <summary>From who asks.</summary>
    public static CallerWire From(Caller caller) => new(
        caller.Name, caller.Scope.Word(), [.. Scopes.All.Where(s => s.Scope <= caller.Scope).Select(s => s.May)], caller.Expires);
}
