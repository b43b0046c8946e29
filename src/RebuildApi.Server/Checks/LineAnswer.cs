using System.IO.Pipelines;
using Microsoft.AspNetCore.Http.Features;

namespace RebuildApi.Server.Checks;

/// <summary>A body of lines in and an answer of lines out at the same time, of any length.</summary>
/// <param name="mediaType">What the answer is.</param>
/// <param name="run">Judges the lines.</param>
public sealed class LineAnswer(string mediaType, Func<PipeReader, PipeWriter, CancellationToken, Task> run) : IResult
{
    /// <summary>How long a client may leave answers lying before they wait in a file.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    /// <summary>The longest such file, bytes: answers of some thirty million rows.</summary>
    private const long LongestWait = 4L << 30;

    private static readonly StreamPipeReaderOptions s_reading = new(bufferSize: 1 << 16);
    private static readonly StreamPipeWriterOptions s_writing = new(leaveOpen: true, minimumBufferSize: 1 << 16);

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        if (httpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = null;
        if (httpContext.Features.Get<Microsoft.AspNetCore.Server.Kestrel.Core.Features.IHttpMinRequestBodyDataRateFeature>() is { } rate)
            rate.MinDataRate = null;
        var plain = Encodings.Plain(httpContext.Request);
        httpContext.Response.ContentType = mediaType;
        await using var waiting = new WaitingAnswer(httpContext.Response.BodyWriter, Patience, LongestWait);
        var reader = Reader(plain, httpContext);
        var compressed = Encodings.Compressed(httpContext, waiting);
        var writer = PipeWriter.Create(compressed, s_writing);
        await run(reader, writer, httpContext.RequestAborted);
        await writer.CompleteAsync();
        if (compressed != waiting)
            await compressed.DisposeAsync();
        await waiting.Finish(httpContext.RequestAborted);
        await reader.CompleteAsync();
    }

    private static PipeReader Reader(Stream plain, HttpContext http) =>
        plain == http.Request.Body ? http.Request.BodyReader : PipeReader.Create(plain, s_reading);
}
