using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>Issues tokens and takes them back, inside one change of the store.</summary>
public static class TokenDesk
{
    /// <summary>Names that mean something else in the chain.</summary>
    public static readonly string[] Kept = [Caller.ThisMachine.Name, Caller.Nobody, Console];

    /// <summary>Who asks when it is the commands of the executable.</summary>
    public const string Console = "console";

    /// <summary>Issues a token.</summary>
    /// <param name="session">The change.</param>
    /// <param name="asked">What is wanted.</param>
    /// <param name="secret">Its secret.</param>
    /// <param name="by">Who asks.</param>
    /// <param name="now">Now.</param>
    /// <exception cref="DuplicateIdException">The name was given before.</exception>
    public static AccessToken Issue(IWriteSession session, NewToken asked, string secret, string by, DateTimeOffset now)
    {
        if (session.Find<AccessToken>(asked.Name) is not null || Kept.Contains(asked.Name, StringComparer.OrdinalIgnoreCase))
            throw new DuplicateIdException("token", asked.Name);
        return session.Put(new AccessToken(asked.Name, asked.Scope.Word(), Secret.HashOf(secret), now, by, asked.Expires, null, null, 0), 0);
    }

    /// <summary>Takes a token back; one that was taken back already stays as it is.</summary>
    public static AccessToken Revoke(IWriteSession session, AccessToken token, string by, DateTimeOffset now) =>
        token.Revoked is not null ? token : session.Put(token with { Revoked = now, RevokedBy = by }, token.Version);

    /// <summary>Whether no administrator would be left without this token.</summary>
    public static bool IsLastAdministrator(IWriteSession session, AccessToken token, DateTimeOffset now) =>
        token.CountsAt(now) && token.Scope == Scope.Administrator.Word()
        && !session.All<AccessToken>().Any(t => t.Name != token.Name && t.Scope == token.Scope && t.CountsAt(now));

    /// <summary>Issues a token outside of any request.</summary>
    /// <returns>Its secret.</returns>
    public static async Task<string> Issue(IStore store, NewToken asked, TimeProvider time, CancellationToken cancellation = default)
    {
        var secret = Secret.New();
        await store.Write(ByCommand("token add"), session =>
        {
            Issue(session, asked, secret, Console, time.GetUtcNow());
            return StoredAnswer.Nothing;
        }, cancellation);
        return secret;
    }

    /// <summary>Who asks, for the store, when it is a command of the executable.</summary>
    public static WriteRequest ByCommand(string operation) => new(Console, operation, null, "", DryRun: false);
}

/// <summary>What token is wanted.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Scope">What it may do.</param>
/// <param name="Expires">From when it no longer counts; null for never.</param>
public sealed record NewToken(string Name, Scope Scope, DateTimeOffset? Expires = null);
