using System.IO.Compression;
using System.Text;
using Microsoft.AspNetCore.Http;
using RebuildApi.Server.Checks;

namespace RebuildApi.Server.Tests.Checks;

/// <summary>
/// A client that leaves in the middle leaves nothing behind: what compresses its answer is let go of, which shows by the end that it then writes (the trailer of
/// RFC 1952, 2.3, without which nothing can be unpacked to the end).
/// </summary>
public sealed class LeavingTests
{
    private const string Line = "a verdict\n";

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task A_client_that_leaves_leaves_no_compressor_behind(string encoding)
    {
        using var leaving = new CancellationTokenSource();
        using var sent = new MemoryStream();
        var http = Asking(encoding, sent, leaving.Token);
        var answer = new LineAnswer("application/x-ndjson", async (_, verdicts, cancellation) =>
        {
            await verdicts.WriteAsync(Encoding.UTF8.GetBytes(Line), CancellationToken.None);
            await leaving.CancelAsync();
            cancellation.ThrowIfCancellationRequested();
        });

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => answer.ExecuteAsync(http));

        await http.Response.BodyWriter.FlushAsync();
        Assert.Equal(Line, await Unpacked(encoding, sent.ToArray()));
    }

    [Fact]
    public async Task What_unpacks_its_rows_is_let_go_of_too()
    {
        using var leaving = new CancellationTokenSource();
        using var sent = new MemoryStream();
        var http = Asking("identity", sent, leaving.Token);
        using var rows = new WatchedStream();
        http.Request.Body = rows;
        http.Request.Headers.ContentEncoding = "gzip";
        var answer = new LineAnswer("application/x-ndjson", async (_, _, cancellation) =>
        {
            await leaving.CancelAsync();
            cancellation.ThrowIfCancellationRequested();
        });

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => answer.ExecuteAsync(http));

        Assert.True(rows.IsLetGo);
    }

    private static DefaultHttpContext Asking(string encoding, Stream answer, CancellationToken leaving)
    {
        var http = new DefaultHttpContext { RequestAborted = leaving };
        http.Request.Headers.AcceptEncoding = encoding;
        http.Response.Body = answer;
        return http;
    }

    // A reader that comes to the end of the bytes before the end of what was packed complains, or gives back less.
    private static async Task<string> Unpacked(string encoding, byte[] bytes)
    {
        if (encoding == "gzip")
            Assert.Equal(Line.Length, BitConverter.ToInt32(bytes.AsSpan(bytes.Length - 4)));
        using var packed = new MemoryStream(bytes);
        await using Stream plain = encoding == "gzip" ? new GZipStream(packed, CompressionMode.Decompress) : new BrotliStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(plain);
        return await reader.ReadToEndAsync();
    }

    /// <summary>Rows that know when they are let go of.</summary>
    private sealed class WatchedStream : MemoryStream
    {
        public bool IsLetGo { get; private set; }

        protected override void Dispose(bool disposing)
        {
            IsLetGo = true;
            base.Dispose(disposing);
        }
    }
}
