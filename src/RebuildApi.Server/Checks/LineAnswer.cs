using System.IO.Pipelines;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;

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
        LiftLimits(httpContext.Features);
        var reader = Reader(Encodings.Plain(httpContext.Request), httpContext);
        httpContext.Response.ContentType = mediaType;
        await using var waiting = new WaitingAnswer(httpContext.Response.BodyWriter, Patience, LongestWait);
        var answer = Encodings.Compressed(httpContext, waiting);
        try
        {
            // A compressor holds memory that the collector does not see, so it is let go of however the answer ends: a client that leaves must not leave it behind.
            await using (answer == waiting ? null : answer)
                await Judge(reader, answer, httpContext.RequestAborted);
            await waiting.Finish(httpContext.RequestAborted);
        }
        finally
        {
            await reader.CompleteAsync();
        }
    }

    private static void LiftLimits(IFeatureCollection features)
    {
        if (features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = null;
        if (features.Get<IHttpMinRequestBodyDataRateFeature>() is { } rate)
            rate.MinDataRate = null;
    }

    private async Task Judge(PipeReader reader, Stream answer, CancellationToken cancellation)
    {
        var writer = PipeWriter.Create(answer, s_writing);
        try
        {
            await run(reader, writer, cancellation);
            await writer.CompleteAsync();
        }
        catch (Exception fault)
        {
            await writer.CompleteAsync(fault);
            throw;
        }
    }

    private static PipeReader Reader(Stream plain, HttpContext http) =>
        plain == http.Request.Body ? http.Request.BodyReader : PipeReader.Create(plain, s_reading);
}
