using System.IO.Compression;
using System.Net.Sockets;
using System.Text;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Checks;

/// <summary>Streams of any length over a real connection, with clients of every manner.</summary>
public sealed class LongStreamTests : IAsyncLifetime
{
    private static readonly byte[] s_thousand = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(
        """{"family":"brackenmere-4","at":"third-gear/bore","value":47.65,"unit":"mm","uncertainty":0.002}""" + "\n", 1000)));

    private RealServer _server = null!;

    public async Task InitializeAsync() => _server = await RealServer.Open();

    public async Task DisposeAsync() => await _server.DisposeAsync();

    [Fact]
    public async Task A_client_that_sends_everything_before_it_reads_gets_every_answer()
    {
        await using var post = await Begin();
        for (var i = 0; i < 150; i++)
            await post.Send(s_thousand).WaitAsync(TimeSpan.FromMinutes(1));
        await post.End();

        var (bytes, last) = await post.ReadToEnd();

        Assert.Contains("\"complete\":true,\"rows\":150000,", last, StringComparison.Ordinal);
        Assert.True(bytes > 150_000 * 100L, $"{bytes} bytes");
    }

    [Fact]
    public async Task A_client_that_takes_its_answers_again_after_a_while_gets_them_before_its_rows_have_ended()
    {
        await using var post = await Begin();
        for (var i = 0; i < 150; i++)
            await post.Send(s_thousand).WaitAsync(TimeSpan.FromMinutes(1));
        var (piece, got) = (new byte[1 << 16], 0L);

        // The rows are not at an end: what comes now, comes while the service still waits for more of them.
        while (got < 150_000 * 100L)
        {
            var read = post.Read(piece);
            while (!read.IsCompleted)
            {
                await Task.WhenAny(read, Task.Delay(200));
                if (!read.IsCompleted)
                    await post.Send(s_thousand.AsMemory(0, s_thousand.Length / 1000));
            }

            got += await read;
        }

        await post.End();
        Assert.Contains("\"complete\":true,", (await post.ReadToEnd()).Last, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_has_its_last_line_only_when_every_row_was_judged_so_that_a_cut_shows()
    {
        await using var cut = await Begin();
        await cut.Send(s_thousand);
        var whole = Encoding.UTF8.GetBytes("\"row\":900,");
        var piece = new byte[1 << 16];
        var text = new MemoryStream();
        while (text.ToArray().AsSpan().IndexOf(whole) < 0)
            text.Write(piece, 0, await cut.Read(piece));
        Assert.DoesNotContain("\"end\":true", Encoding.UTF8.GetString(text.ToArray()), StringComparison.Ordinal);

        await cut.End();

        Assert.Contains("\"end\":true,\"complete\":true,\"rows\":1000,", (await cut.ReadToEnd()).Last, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ten_gigabytes_of_zeros_are_refused_without_being_held()
    {
        await using var post = await Begin();
        var zeros = new byte[1 << 20];
        var before = GC.GetTotalMemory(forceFullCollection: true);

        var sent = await SendUntilRefused(post, zeros, 10L << 10);

        Assert.True(sent < 10 << 10, $"{sent} MiB were taken");
        // Gigabytes were sent. Other tests share this process, so the bound is wide; holding even a tenth would show.
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, 256 << 20);
    }

    [Fact]
    public async Task Ten_gigabytes_that_were_packed_into_ten_megabytes_are_refused_at_their_first_line()
    {
        await using var post = await Begin("Content-Encoding: gzip");
        var packed = new MemoryStream();
        await using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var zeros = new byte[1 << 20];
            for (var i = 0; i < 64; i++)
                await gzip.WriteAsync(zeros);
        }

        await post.Send(packed.ToArray());
        await post.End();

        var (bytes, last) = await post.ReadToEnd();
        Assert.Contains("row-too-long", last, StringComparison.Ordinal);
        Assert.True(bytes < 4096);
    }

    private static async Task<int> SendUntilRefused(WirePost post, byte[] piece, long pieces)
    {
        var answer = post.ReadToEnd();
        for (var sent = 0; sent < pieces; sent++)
        {
            try
            {
                await post.Send(piece);
            }
            catch (IOException e) when (e.InnerException is SocketException)
            {
                return sent;
            }

            if (answer.IsCompleted)
                return sent;
        }

        return (int)pieces;
    }

    private async Task<WirePost> Begin(params IEnumerable<string> headers)
    {
        var post = new WirePost();
        await post.Begin(new Uri(_server.Address + "/v1/checks"), ["Content-Type: application/x-ndjson", "Authorization: Bearer " + _server.Token, .. headers]);
        return post;
    }
}
