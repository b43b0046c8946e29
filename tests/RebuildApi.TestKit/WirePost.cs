using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace RebuildApi.TestKit;

/// <summary>
/// A POST over a bare connection, whose sender and reader know nothing of each other: the client of .NET sends the whole body before it reads, so it can
/// show neither a reader beside the sender nor one that goes away.
/// </summary>
public sealed class WirePost : IAsyncDisposable
{
    private readonly TcpClient _connection = new() { NoDelay = true };
    private NetworkStream? _wire;

    /// <summary>Connects, and sends the head.</summary>
    /// <param name="to">The whole address.</param>
    /// <param name="headers">Further headers, a line each.</param>
    public async Task Begin(Uri to, params IEnumerable<string> headers)
    {
        await _connection.ConnectAsync(to.Host, to.Port);
        _wire = _connection.GetStream();
        var head = $"POST {to.PathAndQuery} HTTP/1.1\r\nHost: {to.Authority}\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n";
        await _wire.WriteAsync(Encoding.ASCII.GetBytes(head + string.Concat(headers.Select(h => h + "\r\n")) + "\r\n"));
    }

    /// <summary>Sends a piece of the body.</summary>
    public async Task Send(ReadOnlyMemory<byte> piece)
    {
        await _wire!.WriteAsync(Encoding.ASCII.GetBytes(piece.Length.ToString("x", CultureInfo.InvariantCulture) + "\r\n"));
        await _wire.WriteAsync(piece);
        await _wire.WriteAsync("\r\n"u8.ToArray());
    }

    /// <summary>The body is whole.</summary>
    public async Task End() => await _wire!.WriteAsync("0\r\n\r\n"u8.ToArray());

    /// <summary>Reads what is there, at least a byte; 0 when the other side has ended.</summary>
    /// <exception cref="TimeoutException">A minute went by and nothing came.</exception>
    public Task<int> Read(Memory<byte> into) => _wire!.ReadAsync(into).AsTask().WaitAsync(TimeSpan.FromMinutes(1));

    /// <summary>Reads to the end and counts the bytes, framing included.</summary>
    /// <returns>How many, and the last few as text.</returns>
    public async Task<(long Bytes, string Last)> ReadToEnd()
    {
        const int Tail = 1024;
        var (piece, count, last) = (new byte[1 << 16], 0L, "");
        for (int read; (read = await Read(piece)) > 0; count += read)
        {
            last += Encoding.UTF8.GetString(piece, Math.Max(0, read - Tail), Math.Min(read, Tail));
            last = last[^Math.Min(Tail, last.Length)..];
        }

        return (count, last);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_wire is not null)
            await _wire.DisposeAsync();
        _connection.Dispose();
    }
}
