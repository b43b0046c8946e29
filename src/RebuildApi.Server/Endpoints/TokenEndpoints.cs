using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Endpoints;

/// <summary>Who may come in, and what they may do.</summary>
public static class TokenEndpoints
{
    private const string ShownOnce = "Shown this once, and only its hash is kept: hand it over now. Send it as Authorization: Bearer.";
    private const string NotAgain = "A secret is shown in the first answer only. If that was lost, revoke this token and issue another.";
    private const string NotYet = "A dry run issues nothing, so there is no secret.";

    /// <summary>The routes.</summary>
    public static void MapTokens(this IEndpointRouteBuilder routes)
    {
        var group = routes.Resource("access");
        group.Read("/access", Mine, "getAccess", "What may I do?", "Who asks, by the token that came, and what its scope allows.");
        group.List<ListOf<TokenWire>>("/tokens", List, "listTokens", "List tokens", "Every token that was ever issued, in the order of their names, with when it was last used. No secrets.")
            .Needs(Scope.Administrator);
        group.Make("/tokens", Issue, "issueToken", "Issue a token",
                "Each bench, program and person gets one of its own: its name stands in the records, and it can be revoked without the others. The secret is in this answer only; repeating the idempotency key gives the answer without it.")
            .Needs(Scope.Administrator).Fails(Problems.DuplicateId, Problems.InvalidContent)
            .Example("""{ "name": "bench-1", "scope": "bench", "expires": "2099-01-31T00:00:00Z" }""");
        group.Read("/tokens/{token}", Get, "getToken", "Get a token", "One token, without its secret.").Needs(Scope.Administrator).Fails(Problems.UnknownToken);
        group.Make("/tokens/{token}/revocations", Revoke, "revokeToken", "Revoke a token", "Takes it back at once and for good. Revoking it again changes nothing.")
            .Needs(Scope.Administrator).Fails(Problems.UnknownToken, Problems.LastAdministrator);
    }

    private static Found<CallerWire> Mine(HttpContext http) => new(CallerWire.From(Caller.Of(http)!));

    private static async Task<Listing<TokenWire, ListOf<TokenWire>>> List(IStore store, LastUses uses, TimeProvider time, CancellationToken cancellation)
    {
        var used = await uses.All(cancellation);
        PageReader<AccessToken> pages = (after, limit, stop) => store.Page<AccessToken>(ShopFilter.Every, after, limit, stop);
        return new(pages.Select(t => TokenWire.From(t, Last(used, t), time.GetUtcNow())), (items, next, asOf) => new(items, next, asOf));
    }

    private static async Task<Found<TokenWire>> Get(string token, IStore store, LastUses uses, TimeProvider time, CancellationToken cancellation)
    {
        var found = await store.Find<AccessToken>(token, cancellation) ?? throw Unknown();
        return new(TokenWire.From(found, Last(await uses.All(cancellation), found), time.GetUtcNow()));
    }

    private static async Task<CreatedAnswer<IssuedTokenWire>> Issue(
        Body<TokenRequest> body, HttpContext http, IStore store, TokenBook book, TimeProvider time, CancellationToken cancellation)
    {
        var now = time.GetUtcNow();
        if (body.Value.Expires <= now)
            throw Past(body.Value.Expires.Value);
        var (secret, isTrial) = (Secret.New(), body.Request.DryRun);
        var asked = new NewToken(body.Value.Name, body.Value.Scope, body.Value.Expires);
        var answer = await store.Write(body.Request, session =>
        {
            var token = TokenWire.From(TokenDesk.Issue(session, asked, secret, Caller.NameOf(http), now), null, now);
            var shown = isTrial ? new IssuedTokenWire(token, null, NotYet) : new IssuedTokenWire(token, secret, ShownOnce);
            return Answer.Created("/v1/tokens/" + token.Name, shown) with { Kept = Answer.Changed(shown with { Secret = null, Note = NotAgain }).Body };
        }, cancellation);
        book.Forget();
        return new(answer, isTrial);
    }

    private static async Task<ChangedAnswer<TokenWire>> Revoke(
        string token, NoBody body, HttpContext http, IStore store, TokenBook book, LastUses uses, TimeProvider time, CancellationToken cancellation)
    {
        var (used, now) = (await uses.All(cancellation), time.GetUtcNow());
        var answer = await store.Write(body.Request, session =>
        {
            var found = session.Find<AccessToken>(token) ?? throw Unknown();
            if (TokenDesk.IsLastAdministrator(session, found, now))
                throw new ProblemException(Problems.LastAdministrator, $"{token} is the only administrator's token that still counts.");
            return Answer.Changed(TokenWire.From(TokenDesk.Revoke(session, found, Caller.NameOf(http), now), Last(used, found), now));
        }, cancellation);
        book.Forget();
        return new(answer, body.Request.DryRun);
    }

    private static DateTimeOffset? Last(IReadOnlyDictionary<string, DateTimeOffset> used, AccessToken token) =>
        used.TryGetValue(token.Name, out var at) ? at : null;

    private static ProblemException Past(DateTimeOffset expires) => new(Problems.InvalidContent, "The token would have expired already.",
        [new FieldError("/expires", FieldProblems.BadTime.Code, "This time has passed.", expires.ToString("O", System.Globalization.CultureInfo.InvariantCulture), null, "Name a time to come, or leave it out.")]);

    private static ProblemException Unknown() => new(Problems.UnknownToken, "No token of this name was issued.");
}
