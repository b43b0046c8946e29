using System.Buffers;

namespace RebuildApi.Server.Checks;

/// <summary>What is done with each line of a stream. Called from several threads at once.</summary>
public interface ILineJudge
{
    /// <summary>Judges one line.</summary>
    /// <param name="line">The line, without its end; never empty.</param>
    /// <param name="number">Its number, from 1.</param>
    /// <param name="to">Where the answer goes.</param>
    /// <param name="counts">How many lines came to what so far.</param>
    void Judge(ReadOnlySpan<byte> line, long number, IBufferWriter<byte> to, ref CheckCounts counts);

    /// <summary>Writes the last row: how many came to what, so that a stream cut short is noticed.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="counts">The counts.</param>
    /// <param name="fault">What ended it before the end of what was sent; null when all was read.</param>
    void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault);
}
