using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Results;

/// <summary>200 with a stored file as its own checked type; 304 when the client has it already. A browser never runs anything of it.</summary>
/// <param name="content">The bytes.</param>
/// <param name="mediaType">Its type.</param>
/// <param name="name">Name to save it under: letters, digits, dots and hyphens.</param>
/// <param name="isShown">Whether a browser may show it in place.</param>
/// <param name="sha256">Its hash; the entity tag.</param>
public sealed class FileAnswer(byte[] content, string mediaType, string name, bool isShown, string sha256) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        if (Conditional.Matches(httpContext, Etags.OfFile(sha256)))
            return;
        httpContext.Begin();
        var headers = httpContext.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'none'; sandbox; frame-ancestors 'none'";
        headers.ContentDisposition = $"{(isShown ? "inline" : "attachment")}; filename=\"{name}\"";
        httpContext.Response.ContentType = mediaType;
        httpContext.Response.ContentLength = content.Length;
        await httpContext.Response.Body.WriteAsync(content, httpContext.RequestAborted);
    }
}
