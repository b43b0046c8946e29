namespace RebuildApi.Server.Results;

/// <summary>
/// 200 with something whole. When the time of the request is over before it is sent, that is answered; the framework's own would cut the client off, or
/// send nothing as if that were all.
/// </summary>
/// <param name="content">The bytes.</param>
/// <param name="mediaType">What they are.</param>
public sealed class BytesAnswer(ReadOnlyMemory<byte> content, string mediaType) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        httpContext.Begin();
        httpContext.Response.ContentType = mediaType;
        httpContext.Response.ContentLength = content.Length;
        await httpContext.Response.Body.WriteAsync(content, httpContext.RequestAborted);
    }
}
