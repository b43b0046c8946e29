using System.Text.Json;
using RebuildApi.Server.Access;
using RebuildApi.Server.Results;

namespace RebuildApi.Server.Pages;

/// <summary>
/// A page of the shop in one answer: style and script stand in it, so a cold cache needs one round trip, and the content security policy names
/// exactly these two by their hashes, so nothing that a person typed can ever run.
/// </summary>
/// <param name="words">The words.</param>
/// <param name="title">Its title.</param>
/// <param name="here">The entry of the head line that it belongs to.</param>
/// <param name="body">The content, made safe.</param>
/// <param name="scripts">Its own scripts in order, or none.</param>
/// <param name="data">What the script needs.</param>
public sealed class Frame(PageWords words, string title, string here, string body, string[]? scripts = null, object? data = null) : IResult
{
    private static readonly string Style = PageAssets.Text("shop.css");
    private static readonly string Queue = PageAssets.Script("queue.js");
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull };

    private static readonly (string Id, string Address)[] Ways = [("bench", "/"), ("shop", "/shop"), ("addresses", "/addresses"), ("docs", "/docs")];
    private static readonly string Out = PageAssets.Script("head.js");

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Begin();
        var asked = httpContext.RequestServices.GetRequiredService<TokensAsked>().Yes;
        var caller = asked ? Caller.Of(httpContext) : null;
        var code = (scripts is null ? "" : Queue + string.Concat(scripts.Select(PageAssets.Script))) + (caller is null ? "" : Out);
        var headers = httpContext.Response.Headers;
        headers.ContentSecurityPolicy =
            $"default-src 'none'; style-src {PageAssets.Source(Style)}; {(code.Length == 0 ? "" : $"script-src {PageAssets.Source(code)}; connect-src 'self'; ")}img-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";
        headers.CacheControl = "no-store";
        httpContext.Response.ContentType = "text/html; charset=utf-8";
        return httpContext.Response.WriteAsync(Whole(code, asked ? SignedIn(caller) : ""), httpContext.RequestAborted);
    }

    private string Whole(string code, string signedIn) => $"""
        <!doctype html>
        <html lang="{words.Language}">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{Page.Safe(title)}</title>
        <link rel="icon" href="/icon.svg">
        <style>{Style}</style>
        </head>
        <body>
        <a class="skip" href="#content">{Page.Safe(words["skip"])}</a>
        <header class="top"><strong>{Page.Safe(words["app"])}</strong><nav class="row" aria-label="{Page.Safe(words["app"])}">{string.Concat(Ways.Select(Way))}{signedIn}</nav></header>
        <main id="content">
        <h1>{Page.Safe(title)}</h1>
        {(scripts is null ? "" : $"<noscript><p class=\"note\">{Page.Safe(words["needs-script"])}</p></noscript><div id=\"unsent\" aria-live=\"polite\"></div>")}
        {body}
        <p class="soft">{Page.Safe(words["standing"])}</p>
        </main>
        {(scripts is null ? "" : $"<script type=\"application/json\" id=\"data\">{JsonSerializer.Serialize(data, Json)}</script>")}{(code.Length == 0 ? "" : $"<script>{code}</script>")}
        </body>
        </html>
        """;

    private string SignedIn(Caller? caller) => caller is null
        ? Way(("sign-in", "/sign-in"))
        : $"<span class=\"caller\">{Page.Safe(caller.Name)}</span><button type=\"button\" id=\"out\">{Page.Safe(words["sign-in.out"])}</button>";

    private string Way((string Id, string Address) way) =>
        $"<a href=\"{way.Address}\"{(way.Id == here ? " aria-current=\"page\"" : "")}>{Page.Safe(words["nav." + way.Id])}</a>";
}
