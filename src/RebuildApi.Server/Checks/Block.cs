using System.Buffers;

namespace RebuildApi.Server.Checks;

/// <summary>Some whole lines and, when they are judged, their verdicts. Used again and again.</summary>
/// <param name="most">The most bytes it holds, and so the longest line.</param>
public sealed class Block(int most)
{
    private const int UsualAnswer = 1 << 17;

    private readonly byte[] _lines = new byte[most];
    private int _length;

    /// <summary>Number of the first line, from 1.</summary>
    public long First { get; private set; }

    /// <summary>The lines.</summary>
    public ReadOnlySpan<byte> Lines => _lines.AsSpan(0, _length);

    /// <summary>The verdicts on them.</summary>
    public ArrayBufferWriter<byte> Verdicts { get; } = new(Math.Min(2 * most, UsualAnswer));

    /// <summary>How many rows came to what.</summary>
    public CheckCounts Counts { get; private set; }

    /// <summary>Takes lines in, in place of those before.</summary>
    public Block Take(in ReadOnlySequence<byte> lines, long first)
    {
        _length = (int)lines.Length;
        lines.CopyTo(_lines);
        First = first;
        Verdicts.ResetWrittenCount();
        Counts = default;
        return this;
    }

    /// <summary>Judges each line.</summary>
    public Block Judge(ILineJudge judge)
    {
        var counts = default(CheckCounts);
        var rest = Lines;
        for (var number = First; !rest.IsEmpty; number++)
        {
            var end = rest.IndexOf((byte)'\n');
            var line = (end < 0 ? rest : rest[..end]).TrimEnd((byte)'\r');
            rest = end < 0 ? default : rest[(end + 1)..];
            if (!line.IsEmpty)
                judge.Judge(line, number, Verdicts, ref counts);
        }

        Counts = counts;
        return this;
    }
}
