using System.Globalization;
using RebuildApi.Storage;

namespace RebuildApi.Server.Access;

/// <summary>Finds out who asks and notes it beside the request. Refuses nobody: what an address asks for is held against it later.</summary>
public sealed class CallerFinder(RequestDelegate next, TokensAsked asked, TokenBook book, LastUses uses, TimeProvider time)
{
    /// <summary>Notes who asks and runs the rest of the pipeline.</summary>
    public async Task InvokeAsync(HttpContext http)
    {
        http.Features.Set(asked.Yes ? await Find(http) : new Admission(Caller.ThisMachine));
        await next(http);
    }

    private async ValueTask<Admission> Find(HttpContext http)
    {
        if (SentToken.Of(http.Request) is not { } secret)
            return Admission.NoToken;
        try
        {
            var found = Look(await book.Find(secret, http.RequestAborted), time.GetUtcNow());
            if (found.Caller is { } caller)
                uses.Saw(caller.Name);
            return found;
        }
        catch (StorageUnavailableException e)
        {
            // Addresses that ask for no token still answer: whether it lives, and what is wrong with it.
            return Admission.NoToken with { Unavailable = e };
        }
    }

    /// <summary>What a token that was found is worth at a time.</summary>
    public static Admission Look(AccessToken? token, DateTimeOffset now) => token switch
    {
        null => new(null, "No such token was issued here.") { IsUnknown = true },
        { Revoked: { } at } => new(null, $"The token {token.Name} was revoked at {Shown(at)}."),
        { Expires: { } at } when now >= at => new(null, $"The token {token.Name} expired at {Shown(at)}."),
        _ => Scopes.Of(token.Scope) is { } scope ? new(new Caller(token.Name, scope, token.Expires)) : new(null, $"The token {token.Name} has no scope that is known here."),
    };

    private static string Shown(DateTimeOffset at) => at.UtcDateTime.ToString("u", CultureInfo.InvariantCulture);
}
