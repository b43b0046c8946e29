using System.Buffers;

namespace RebuildApi.Server.Checks;

/// <summary>How rows come in.</summary>
public interface IRowForm
{
    /// <summary>Takes a line apart.</summary>
    /// <returns>What is wrong with it, or null.</returns>
    CheckFault? Read(ReadOnlySpan<byte> line, ref CheckRow row);
}

/// <summary>How verdicts go out.</summary>
public interface IVerdictForm
{
    /// <summary>What HTTP calls it.</summary>
    string MediaType { get; }

    /// <summary>What stands before the first row.</summary>
    void Begin(IBufferWriter<byte> to);

    /// <summary>A judged row.</summary>
    void Write(IBufferWriter<byte> to, long number, in CheckRow row, in RowVerdict verdict);

    /// <summary>A row with a fault.</summary>
    void Write(IBufferWriter<byte> to, long number, in CheckRow row, CheckFault fault);

    /// <summary>The last row: how many rows came to what, so that a stream cut short is noticed.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="counts">The counts.</param>
    /// <param name="fault">What ended it before the end of what was sent; null when all was read.</param>
    void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault);
}
