using System.Globalization;
using System.IO.Pipelines;

namespace RebuildApi.Server.Checks;

/// <summary>
/// <c>check FILE</c>: checks every row of a file against the families and the shop's policy, without a running service. Verdicts go to standard output,
/// progress to standard error.
/// </summary>
public static class CheckCommand
{
    private const string Usage = """
        usage: check FILE [--family ID] [--table] [settings]
          FILE      rows as .csv (first line names the columns) or .ndjson; - for standard input as NDJSON
          --family  the family of rows that name none
          --table   verdicts as a table; else one JSON object on each line
        example: check old-readings.csv --family brackenmere-4 --table > verdicts.csv

        """;

    /// <summary>Runs it.</summary>
    /// <returns>0 when every row conforms; 1 when some do not or can't be told; 2 when rows are wrong or the arguments are not understood.</returns>
    public static async Task<int> Run(string[] args)
    {
        if (args is not [var file, .. var rest] || file is "-h" or "--help" || !TryRead(rest, out var family, out var table, out var settings) || (file != "-" && !File.Exists(file)))
        {
            await Console.Error.WriteAsync(Usage);
            return 2;
        }

        await using var app = RebuildApplication.Create(["--Logging:LogLevel:Default=Warning", .. settings]);
        var judge = new RowJudge(await app.Services.GetRequiredService<CheckDesk>().Open(default), family);
        await using var rows = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
        var counts = await Check(rows, file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase), table ? new CsvVerdicts() : new JsonVerdicts(), judge);
        return counts.Faults > 0 ? 2 : counts.Conforming == counts.Rows ? 0 : 1;
    }

    private static async Task<CheckCounts> Check(Stream rows, bool isTable, IVerdictForm form, RowJudge judge)
    {
        await using var output = Console.OpenStandardOutput();
        var (reader, writer) = (PipeReader.Create(rows, new StreamPipeReaderOptions(bufferSize: 1 << 16)), PipeWriter.Create(output));
        var counts = await new CheckRun(judge, form).Run(reader, isTable, writer, Console.IsErrorRedirected ? null : new Bar(rows), default);
        await writer.CompleteAsync();
        await reader.CompleteAsync();
        return counts;
    }

    private static bool TryRead(string[] args, out string? family, out bool table, out string[] settings)
    {
        family = null;
        table = args.Contains("--table");
        var at = Array.IndexOf(args, "--family");
        if (at >= 0 && at + 1 < args.Length)
            family = args[at + 1];
        var others = args.Where((a, i) => a != "--table" && i != at && (at < 0 || i != at + 1)).ToArray();
        settings = others;
        return (at < 0 || family is not null) && others.All(a => a.StartsWith("--Rebuild:", StringComparison.Ordinal));
    }

    /// <summary>A line that grows with the share of the file that was read.</summary>
    private sealed class Bar(Stream rows) : IProgress<long>
    {
        private const int Width = 40;
        private int _shown = -1;

        public void Report(long value)
        {
            var share = rows.CanSeek && rows.Length > 0 ? (int)(Width * rows.Position / rows.Length) : 0;
            if (share == _shown)
                return;
            _shown = share;
            Console.Error.Write($"\r[{new string('#', share)}{new string('.', Width - share)}] {value.ToString("N0", CultureInfo.InvariantCulture)} rows");
            if (share == Width)
                Console.Error.WriteLine();
        }
    }
}
