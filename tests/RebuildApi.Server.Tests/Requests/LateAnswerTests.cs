using System.Collections.Immutable;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Tests.Requests;

/// <summary>The time of a request runs out while its answer is written: it is written whole, and not cut to have a problem put behind it. Run out before, nothing of it is.</summary>
public sealed class LateAnswerTests
{
    [Fact]
    public async Task An_answer_that_was_begun_is_written_whole()
    {
        Assert.Equal("[1,2]", await Answered(new Found<int[]>([1, 2])));
        PageReader<int> pages = (_, _, _) => ValueTask.FromResult(new Page<int>([7], null));
        Assert.StartsWith("""{"items":[7]""", await Answered(new Listing<int, ListOf<int>>(pages, (items, next, asOf) => new(items, next, asOf))), StringComparison.Ordinal);
        Assert.Equal("{}", await Answered(new ChangedAnswer<int[]>(new StoredAnswer(200, "application/json", "{}"u8.ToArray(), ImmutableSortedDictionary<string, string>.Empty), dryRun: false)));
    }

    [Fact]
    public async Task Nothing_is_written_of_an_answer_that_comes_too_late()
    {
        await using var body = new MemoryStream();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Write(new Found<int[]>([1, 2]), body, new CancellationToken(canceled: true)));

        Assert.Equal(0, body.Length);
    }

    private static async Task<string> Answered(IResult result)
    {
        using var time = new CancellationTokenSource();
        await using var body = new MemoryStream();
        await using var last = new RunsOutAtFirstByte(body, time);
        await Write(result, last, time.Token);
        Assert.True(time.IsCancellationRequested);
        return Encoding.UTF8.GetString(body.ToArray());
    }

    private static async Task Write(IResult result, Stream body, CancellationToken time)
    {
        using var services = new ServiceCollection().AddSingleton(TimeProvider.System).BuildServiceProvider();
        var http = new DefaultHttpContext { RequestAborted = time, RequestServices = services };
        http.Response.Body = body;
        http.SetEndpoint(new Endpoint(null, new EndpointMetadataCollection(ListForm.Json), "a list"));
        await result.ExecuteAsync(http);
    }

    /// <summary>A body whose request's time is over once the first of it is written.</summary>
    private sealed class RunsOutAtFirstByte(MemoryStream to, CancellationTokenSource time) : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => to.Length;

        public override long Position { get => to.Position; set => throw new NotSupportedException(); }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count)
        {
            time.Cancel();
            to.Write(buffer, offset, count);
        }

        public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
        {
            await time.CancelAsync();
            cancellationToken.ThrowIfCancellationRequested();
            await to.WriteAsync(buffer, CancellationToken.None);
        }

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();
    }
}
