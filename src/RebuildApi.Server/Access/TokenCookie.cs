namespace RebuildApi.Server.Access;

/// <summary>The cookie that keeps a browser signed in. It holds the token itself, so that revoking the token ends it too and nothing more is to be kept here.</summary>
public static class TokenCookie
{
    private static readonly TimeSpan Longest = TimeSpan.FromDays(180);

    /// <summary>Gives it, for as long as the token counts, half a year at most.</summary>
    public static void Give(HttpContext http, string secret, DateTimeOffset? expires, DateTimeOffset now)
    {
        var age = expires is { } end && end - now < Longest ? end - now : Longest;
        http.Response.Headers.CacheControl = "no-store";
        http.Response.Cookies.Append(SentToken.CookieOf(http.Request), secret, Manner(http, age));
    }

    /// <summary>Takes it away.</summary>
    public static void Take(HttpContext http) => http.Response.Cookies.Delete(SentToken.CookieOf(http.Request), Manner(http, null));

    private static CookieOptions Manner(HttpContext http, TimeSpan? age) => new()
    {
        HttpOnly = true,
        SameSite = SameSiteMode.Strict,
        Secure = http.Request.IsHttps,
        Path = "/",
        MaxAge = age,
        IsEssential = true,
    };
}
