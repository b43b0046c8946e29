using System.Buffers;
using System.IO.Pipelines;
using Microsoft.Win32.SafeHandles;

namespace RebuildApi.Server.Checks;

/// <summary>
/// An answer that its reader may leave lying. Many clients send the whole of a body before they read the first byte of the answer; if answers then
/// held back the rows, both would wait for each other for ever. So what the reader does not take within a while waits in a file, from which it goes out
/// in order as soon as it is taken; memory stays the same. Only when the file is full does the reader hold back the rows.
/// </summary>
/// <param name="reader">Where the answer goes.</param>
/// <param name="patience">How long it is waited for the reader before the file is begun.</param>
/// <param name="most">The longest file, bytes.</param>
public sealed class WaitingAnswer(PipeWriter reader, TimeSpan patience, long most) : Stream
{
    private const int Piece = 1 << 16;

    private readonly Lock _file = new();
    private SafeFileHandle? _waiting;
    private long _given;
    private long _kept;
    private Task? _giving;

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <inheritdoc/>
    public override async ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        cancellationToken.ThrowIfCancellationRequested();
        if (TryKeep(buffer.Span))
            return;
        await Finish(cancellationToken);
        reader.Write(buffer.Span);
        var taken = reader.FlushAsync(cancellationToken);
        if (taken.IsCompletedSuccessfully)
            return;
        Task slow = taken.AsTask();
        await slow.WaitAsync(patience, cancellationToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (slow.IsCompleted)
            await slow;
        else
            BeginFile(slow, cancellationToken);
    }

    /// <summary>Waits until the reader has taken everything.</summary>
    public async Task Finish(CancellationToken cancellation)
    {
        if (_giving is { } giving)
            await giving.WaitAsync(cancellation);
    }

    /// <inheritdoc/>
    public override Task FlushAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException("Written without waiting only.");

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        if (_giving is { } giving)
            await giving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _waiting?.Dispose();
        await base.DisposeAsync();
    }

    private void BeginFile(Task slow, CancellationToken cancellation)
    {
        _waiting ??= OpenFile();
        lock (_file)
            _giving = Give(slow, cancellation);
    }

    /// <summary>Puts bytes at the end of the file.</summary>
    /// <returns>False when nothing waits there, or it is full.</returns>
    private bool TryKeep(ReadOnlySpan<byte> bytes)
    {
        lock (_file)
        {
            if (_giving is null || _kept + bytes.Length > most)
                return false;
            RandomAccess.Write(_waiting!, bytes, _kept);
            _kept += bytes.Length;
            return true;
        }
    }

    /// <summary>Gives what is in the file as the reader takes it, until there is no more.</summary>
    private async Task Give(Task slow, CancellationToken cancellation)
    {
        await slow;
        var piece = new byte[Piece];
        while (Next(piece) is > 0 and var read)
        {
            reader.Write(piece.AsSpan(0, read));
            await reader.FlushAsync(cancellation);
        }
    }

    private int Next(Span<byte> piece)
    {
        lock (_file)
        {
            if (_given < _kept)
            {
                var read = RandomAccess.Read(_waiting!, piece, _given);
                _given += read;
                return read;
            }

            RandomAccess.SetLength(_waiting!, 0);
            (_given, _kept, _giving) = (0, 0, null);
            return 0;
        }
    }

    /// <summary>A file that only this program sees, and that goes with it.</summary>
    private static SafeFileHandle OpenFile()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        return File.OpenHandle(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, FileOptions.DeleteOnClose);
    }
}
