using System.Globalization;

namespace RebuildApi.Server.Access;

/// <summary>The token that comes with a request: in the header Authorization (RFC 6750, 2.1), or in the cookie of the pages. Never in an address, which is logged.</summary>
public static class SentToken
{
    private const string Scheme = "Bearer ";

    /// <summary>The secret that was sent; null when none was. Empty when the header is there but is no bearer token.</summary>
    public static string? Of(HttpRequest request)
    {
        if (request.Headers.Authorization is { Count: > 0 } sent)
            return sent is [{ } one] && one.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase) ? one[Scheme.Length..].Trim() : "";
        return IsOwn(request) ? request.Cookies[CookieOf(request)] : null;
    }

    /// <summary>Name of the cookie. A browser shares cookies between the ports of a host, so the port stands in it: two services keep two.</summary>
    public static string CookieOf(HttpRequest request) =>
        "rebuild-" + (request.Host.Port?.ToString(CultureInfo.InvariantCulture) ?? "web");

    /// <summary>Whether the token of a request came as a cookie.</summary>
    public static bool IsCookie(HttpRequest request) => request.Headers.Authorization.Count == 0 && request.Cookies.ContainsKey(CookieOf(request));

    // The cookie counts for what the pages of this very origin ask, and for a person going to a page; not for what a page of another port asks in its name.
    private static bool IsOwn(HttpRequest request) =>
        request.Headers["Sec-Fetch-Site"].ToString() is "" or "same-origin" or "none"
        || (HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"].ToString() == "navigate");
}
