using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Json;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>Where a browser shows its token once and keeps it in a cookie that no script can read and no other site can send.</summary>
public static class SignInPage
{
    private const string Why = "who has no token yet, or none that counts, must be able to show one";

    /// <summary>Serves the page, and takes the token.</summary>
    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        routes.MapOpenPage("/sign-in", Show, Why);
        routes.MapLater(HttpMethods.Post, "/sign-in", SignIn).Open(Why).WithMetadata(new Strict()).ExcludeFromDescription();
        routes.MapLater(HttpMethods.Post, "/sign-out", SignOut).Open("it only forgets").WithMetadata(new Strict()).ExcludeFromDescription();
    }

    private static IResult Show(HttpContext http, TokensAsked asked, PageWords w) =>
        new Frame(w, w["sign-in.title"], "sign-in", Body(Caller.Of(http), asked, w), ["sign-in.js"], new { words = w.Script("sign-in.js"), signedIn = Caller.Of(http) is not null });

    private static string Body(Caller? caller, TokensAsked asked, PageWords w)
    {
        if (!asked.Yes)
            return $"<p>{Page.Safe(w["sign-in.not-asked"])}</p>";
        var standing = caller is null ? "" : $"<p class=\"big\">{Page.Safe(w["sign-in.as", ("name", caller.Name), ("scope", caller.Scope.Word())])}</p>";
        return $"""
            {standing}
            <form id="sign-in" class="card stack">
            <div><label for="token">{Page.Safe(w["sign-in.token"])}</label><input id="token" name="token" type="password" required maxlength="100" autocomplete="current-password" spellcheck="false"></div>
            <button class="main">{Page.Safe(w["sign-in.enter"])}</button>
            </form>
            <p id="said" role="alert"></p>
            <p class="soft">{Page.Safe(w["sign-in.where"])}</p>
            """;
    }

    private static async Task<IResult> SignIn(HttpContext http, Body<SignInRequest> body, TokenBook book, LastUses uses, WrongTokens wrong, TimeProvider time)
    {
        var now = time.GetUtcNow();
        var secret = body.Value.Token.Trim();
        var admission = CallerFinder.Look(await book.Find(secret, http.RequestAborted), now);
        if (admission.Caller is not { } caller)
            throw await ScopeGuard.Refused(http, admission, wrong);
        uses.Saw(caller.Name);
        TokenCookie.Give(http, secret, caller.Expires, now);
        return TypedResults.Json(CallerWire.From(caller), WireJson.Options);
    }

    private static IResult SignOut(HttpContext http, NoBody body)
    {
        TokenCookie.Take(http);
        return TypedResults.NoContent();
    }
}
