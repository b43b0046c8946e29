using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Net.Http.Headers;
using RebuildApi.Server.Access;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server;

/// <summary>
/// Keeps web pages of other origins from changing anything: by what the browser says of the request, and by asking for a content type that
/// no plain form can send, even where there is no body.
/// </summary>
public sealed class OriginGuard(RequestDelegate next)
{
    private static readonly string[] Json = ["application/json"];

    /// <summary>Runs the rest of the pipeline when the request may change something.</summary>
    public Task InvokeAsync(HttpContext http)
    {
        if (IsUnsafe(http.Request.Method) && IsAddress(http.GetEndpoint()))
        {
            RefuseOtherOrigins(http.Request);
            RefuseOtherTypes(http);
        }

        return next(http);
    }

    // The framework's own "wrong method" answer carries no Strict and shall stay a 405.
    private static bool IsAddress(Endpoint? endpoint) => endpoint?.Metadata.GetMetadata<Requests.Strict>() is not null;

    private static bool IsUnsafe(string method) => !(HttpMethods.IsGet(method) || HttpMethods.IsHead(method) || HttpMethods.IsOptions(method));

    private static void RefuseOtherOrigins(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not ("same-origin" or "none"))
            throw new ProblemException(Problems.CrossSite, $"The browser says Sec-Fetch-Site: {site}.");
        if (IsCookieOfNoPage(request))
            throw new ProblemException(Problems.CrossSite, "The token came as a cookie, and neither Origin nor Sec-Fetch-Site says from which page.");
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
            throw new ProblemException(Problems.CrossSite, "The Origin header names another origin.");
    }

    // A browser says where every such request comes from; one that brings the cookie and does not is no page of ours.
    private static bool IsCookieOfNoPage(HttpRequest request) =>
        SentToken.IsCookie(request) && request.Headers.Origin.Count == 0 && request.Headers["Sec-Fetch-Site"].Count == 0;

    private static void RefuseOtherTypes(HttpContext http)
    {
        var taken = http.GetEndpoint()?.Metadata.GetMetadata<IAcceptsMetadata>()?.ContentTypes ?? Json;
        if (MediaTypeHeaderValue.TryParse(http.Request.ContentType, out var sent)
            && taken.Contains(sent.MediaType.ToString(), StringComparer.OrdinalIgnoreCase)
            && (sent.Charset.Length == 0 || sent.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)))
            return;
        var got = http.Request.ContentType is { Length: > 0 } type ? type : "none";
        throw new ProblemException(Problems.UnsupportedMediaType, $"Content-Type is {got}; taken here: {string.Join(", ", taken)} in UTF-8.",
            [new FieldError("header/Content-Type", FieldProblems.NotAllowed.Code, "This content type is not taken here.", got, [.. taken])]);
    }
}
