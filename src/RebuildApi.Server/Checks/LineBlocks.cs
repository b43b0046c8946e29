using System.Buffers;
using System.IO.Pipelines;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>Cuts a stream into blocks of whole lines, whatever is there at the moment, so that a slow sender gets its verdicts at once.</summary>
/// <param name="reader">The stream.</param>
/// <param name="longest">The longest line, bytes.</param>
public sealed class LineBlocks(PipeReader reader, int longest)
{
    private long _line = 1;

    /// <summary>What ended the reading before the end of the stream; null while all is well.</summary>
    public CheckFault? Fault { get; private set; }

    /// <summary>The first line; null when there is none.</summary>
    public async ValueTask<byte[]?> FirstLine(CancellationToken cancellation)
    {
        while (true)
        {
            var read = await reader.ReadAsync(cancellation);
            if (read.Buffer.PositionOf((byte)'\n') is { } end)
                return Took(read.Buffer.Slice(0, end), read.Buffer.GetPosition(1, end));
            if (read.IsCompleted)
                return Took(read.Buffer, read.Buffer.End) is { Length: > 0 } line ? line : null;
            if (IsTooLong(read.Buffer))
                return null;
            reader.AdvanceTo(read.Buffer.Start, read.Buffer.End);
        }
    }

    /// <summary>Fills a block with the next whole lines.</summary>
    /// <returns>False at the end, or when a line is too long.</returns>
    public async ValueTask<bool> Next(Block block, CancellationToken cancellation)
    {
        while (Fault is null)
        {
            var read = await reader.ReadAsync(cancellation);
            var whole = Whole(read.Buffer, read.IsCompleted);
            if (!whole.IsEmpty)
            {
                block.Take(whole, _line);
                _line += block.Lines.Count((byte)'\n');
                reader.AdvanceTo(whole.End);
                return true;
            }

            if (IsTooLong(read.Buffer))
                return false;
            reader.AdvanceTo(read.Buffer.Start, read.Buffer.End);
            if (read.IsCompleted && read.Buffer.IsEmpty)
                return false;
        }

        return false;
    }

    private byte[] Took(in ReadOnlySequence<byte> line, SequencePosition consumed)
    {
        var bytes = line.ToArray();
        reader.AdvanceTo(consumed);
        _line++;
        return bytes.AsSpan().TrimEnd((byte)'\r').ToArray();
    }

    private ReadOnlySequence<byte> Whole(in ReadOnlySequence<byte> buffer, bool completed)
    {
        var window = buffer.Length > longest ? buffer.Slice(0, longest) : buffer;
        if (completed && window.Length == buffer.Length)
            return window;
        return LastLineEnd(window) is { } end ? window.Slice(0, end) : default;
    }

    /// <summary>How many bytes there are up to the last line end, that included; null when there is none.</summary>
    private static long? LastLineEnd(in ReadOnlySequence<byte> window)
    {
        long? last = null;
        long before = 0;
        foreach (var piece in window)
        {
            var at = piece.Span.LastIndexOf((byte)'\n');
            if (at >= 0)
                last = before + at + 1;
            before += piece.Length;
        }

        return last;
    }

    private bool IsTooLong(in ReadOnlySequence<byte> buffer)
    {
        if (buffer.Length < longest)
            return false;
        var start = buffer.Slice(0, 80).ToArray();
        Fault = CheckFault.In("", FieldProblems.RowTooLong, start, $"a row of at most {longest} bytes");
        reader.AdvanceTo(buffer.End);
        return true;
    }
}
