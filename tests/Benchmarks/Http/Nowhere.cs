namespace RebuildApi.Benchmarks.Http;

/// <summary>Counts what is written, and keeps nothing.</summary>
internal sealed class Nowhere : Stream
{
    public long Bytes { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => Bytes;

    public override long Position { get => Bytes; set => throw new NotSupportedException(); }

    public override void Flush()
    {
    }

    public override void Write(byte[] buffer, int offset, int count) => Bytes += count;

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        Bytes += buffer.Length;
        return ValueTask.CompletedTask;
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
