using System.Buffers;

namespace RebuildApi.Server.Checks;

/// <summary>A line that is one row of values, to its verdict.</summary>
public sealed class RowChecker(IRowForm rows, RowJudge judge, IVerdictForm form) : ILineJudge
{
    /// <inheritdoc/>
    public void Judge(ReadOnlySpan<byte> line, long number, IBufferWriter<byte> to, ref CheckCounts counts)
    {
        var row = default(CheckRow);
        var verdict = default(RowVerdict);
        if ((rows.Read(line, ref row) ?? judge.Judge(row, out verdict)) is { } fault)
        {
            form.Write(to, number, row, fault);
            counts.CountFault();
            return;
        }

        form.Write(to, number, row, verdict);
        counts.Count(verdict.Result.Outcome);
    }

    /// <inheritdoc/>
    public void End(IBufferWriter<byte> to, CheckCounts counts, CheckFault? fault) => form.End(to, counts, fault);
}
