using System.IO.Pipelines;
using Microsoft.AspNetCore.Http.Features;

namespace RebuildApi.Server.Checks;

/// <summary>A body of lines in and an answer of lines out at the same time, of any length.</summary>
/// <param name="mediaType">What the answer is.</param>
/// <param name="run">Judges the lines.</param>
public sealed class LineAnswer(string mediaType, Func<PipeReader, PipeWriter, CancellationToken, Task> run) : IResult
{
    private static readonly StreamPipeReaderOptions s_reading = new(bufferSize: 1 << 16);
    private static readonly StreamPipeWriterOptions s_writing = new(leaveOpen: true);

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        if (httpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = null;
        if (httpContext.Features.Get<Microsoft.AspNetCore.Server.Kestrel.Core.Features.IHttpMinRequestBodyDataRateFeature>() is { } rate)
            rate.MinDataRate = null;
        var plain = Encodings.Plain(httpContext.Request);
        httpContext.Response.ContentType = mediaType;
        await using var compressed = Encodings.Compressed(httpContext);
        var (reader, writer) = (Reader(plain, httpContext), Writer(compressed, httpContext));
        await run(reader, writer, httpContext.RequestAborted);
        await writer.CompleteAsync();
        await reader.CompleteAsync();
    }

    private static PipeReader Reader(Stream plain, HttpContext http) =>
        plain == http.Request.Body ? http.Request.BodyReader : PipeReader.Create(plain, s_reading);

    private static PipeWriter Writer(Stream compressed, HttpContext http) =>
        compressed == http.Response.Body ? http.Response.BodyWriter : PipeWriter.Create(compressed, s_writing);
}
