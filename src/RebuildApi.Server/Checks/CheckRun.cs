using System.IO.Pipelines;

namespace RebuildApi.Server.Checks;

/// <summary>Rows of values in, verdict rows out. Nothing is stored.</summary>
/// <param name="judge">Judges a row.</param>
/// <param name="form">How verdicts go out.</param>
public sealed class CheckRun(RowJudge judge, IVerdictForm form)
{
    /// <summary>The longest row, bytes.</summary>
    public const int LongestRow = 1 << 16;

    /// <summary>Judges every row.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="table">Whether they are a table whose first line names the columns; else one JSON object on each line.</param>
    /// <param name="verdicts">Where the verdicts go.</param>
    /// <param name="progress">Told how many rows are done, now and then.</param>
    /// <param name="cancellation">Gives up at once.</param>
    /// <returns>How many rows came to what.</returns>
    public async Task<CheckCounts> Run(PipeReader rows, bool table, PipeWriter verdicts, IProgress<long>? progress, CancellationToken cancellation)
    {
        form.Begin(verdicts);
        var lines = new LineBlocks(rows, LongestRow);
        if (!table)
            return await Judge(new JsonRows());
        CsvRows? columns = null;
        var first = await lines.FirstLine(cancellation) ?? [];
        var fault = lines.Fault ?? CsvRows.Begin(first, out columns);
        if (fault is null)
            return await Judge(columns!);
        form.End(verdicts, default, fault);
        await verdicts.FlushAsync(cancellation);
        return default;

        Task<CheckCounts> Judge(IRowForm read) => new LineRun(new RowChecker(read, judge, form), LongestRow).Run(lines, verdicts, progress, cancellation);
    }
}
