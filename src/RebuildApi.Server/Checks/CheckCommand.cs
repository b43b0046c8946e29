using System.CommandLine;
using System.IO.Pipelines;
using RebuildApi.Server.Commands;
using RebuildApi.Storage;

namespace RebuildApi.Server.Checks;

/// <summary>
/// <c>check FILE</c>: checks every row of a file against the families and the shop's policy, without a running service. Verdicts go to standard output,
/// progress to standard error.
/// </summary>
public static class CheckCommand
{
    /// <summary>The command.</summary>
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Rows as .csv (first line names the columns) or .ndjson; - for standard input as NDJSON." };
        var family = new Option<string?>("--family") { Description = "The family of rows that name none.", HelpName = "id" };
        var table = new Option<bool>("--table") { Description = "Verdicts as a table; else one JSON object on each line." };
        var settings = new Argument<string[]>("settings") { Description = "Settings as --Rebuild:Name=value.", Arity = ArgumentArity.ZeroOrMore };
        var command = new ToldCommand("check", "Checks every row of a file against the families and the shop's policy, without a running service. Verdicts go to standard output, progress to standard error.", """
            Ends with 0 when every row conforms, 1 when some do not or can't be told, 2 when rows are wrong.

            Example:
              check old-readings.csv --family brackenmere-4 --table > verdicts.csv
            """)
        {
            file, family, table, settings,
        };
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction((asked, _) => Run(asked.GetValue(file)!, asked.GetValue(family), asked.GetValue(table), [.. asked.GetValue(settings) ?? [], .. asked.UnmatchedTokens]));
        return command;
    }

    /// <summary>Runs it.</summary>
    /// <returns>0 when every row conforms; 1 when some do not or can't be told; 2 when rows are wrong.</returns>
    private static async Task<int> Run(string file, string? family, bool table, string[] settings)
    {
        if (settings.FirstOrDefault(s => !s.StartsWith("--Rebuild:", StringComparison.Ordinal)) is { } unknown)
            throw new SettingsException([$"{unknown} is neither an option of check nor a setting such as --Rebuild:DataFolder=data."]);
        await using var rows = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
        await using var app = RebuildApplication.Create(["--Logging:LogLevel:Default=Warning", .. settings]);
        var judge = new RowJudge(await app.Services.GetRequiredService<CheckDesk>().Open(default), family);
        var counts = await Check(rows, file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase), table ? new CsvVerdicts() : new JsonVerdicts(), judge);
        return counts.Faults > 0 ? 2 : counts.Conforming == counts.Rows ? 0 : 1;
    }

    private static async Task<CheckCounts> Check(Stream rows, bool isTable, IVerdictForm form, RowJudge judge)
    {
        await using var output = Console.OpenStandardOutput();
        var (reader, writer) = (PipeReader.Create(rows, new StreamPipeReaderOptions(bufferSize: 1 << 16)), PipeWriter.Create(output));
        var counts = await new CheckRun(judge, form).Run(reader, isTable, writer, Bar.On("bytes") is { } bar ? new RowsRead(rows, bar) : null, default);
        await writer.CompleteAsync();
        await reader.CompleteAsync();
        return counts;
    }

    /// <summary>Tells the bar how much of the file was read, since nobody knows how many rows there are.</summary>
    private sealed class RowsRead(Stream rows, IProgress<HowFar> bar) : IProgress<long>
    {
        public void Report(long value) => bar.Report(new HowFar(rows.CanSeek ? rows.Position : 0, rows.CanSeek ? rows.Length : 0));
    }
}
