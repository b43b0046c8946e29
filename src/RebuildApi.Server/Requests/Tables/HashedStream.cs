using System.Security.Cryptography;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Tables;

/// <summary>A request body that is hashed and counted while it is read, so that a long table need not be held to know it again.</summary>
public sealed class HashedStream(Stream inner, long limit) : Stream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long _read;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => _read; set => throw new NotSupportedException(); }

    /// <summary>SHA-256 of what was read; to be asked once, at the end.</summary>
    public byte[] Sha256() => _hash.GetHashAndReset();

    /// <inheritdoc/>
    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        var count = await inner.ReadAsync(buffer, cancellationToken);
        _hash.AppendData(buffer.Span[..count]);
        _read += count;
        return _read > limit ? throw new ProblemException(Problems.BodyTooLarge, $"At most {limit} bytes are taken here.") : count;
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException("Bodies are read without blocking.");

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        _hash.Dispose();
        base.Dispose(disposing);
    }
}
