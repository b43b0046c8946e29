using System.Collections.Immutable;
using System.Text;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using Sylvan.Data.Csv;

namespace RebuildApi.Server.Sheets;

/// <summary>Reads a filled-in sheet that was saved as CSV; separators are found out.</summary>
public static class SheetCsv
{
    /// <summary>The rows.</summary>
    /// <exception cref="ProblemException">It is not a table, or has unknown columns.</exception>
    public static async Task<ImmutableArray<SheetRow>> Read(ReadOnlyMemory<byte> utf8, CancellationToken cancellation)
    {
        try
        {
            var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(utf8.Span).TrimStart('\uFEFF');
            using var reader = new StringReader(text);
            await using var csv = await CsvDataReader.CreateAsync(reader, new CsvDataReaderOptions { HasHeaders = true }, cancellation);
            var table = new SheetTable(Enumerable.Range(0, csv.FieldCount).Select(csv.GetName), Problems.MalformedCsv);
            for (var line = 2; await csv.ReadAsync(cancellation) && table.Take(line, Texts(csv)); line++)
            {
            }

            return table.Rows;
        }
        catch (DecoderFallbackException)
        {
            throw new ProblemException(Problems.MalformedCsv, "The table is not UTF-8.");
        }
        catch (Exception broken) when (broken is FormatException or InvalidDataException or CsvMissingHeadersException or ArgumentException)
        {
            throw new ProblemException(Problems.MalformedCsv, "The table breaks: " + broken.Message);
        }
    }

    private static string[] Texts(CsvDataReader csv) => [.. Enumerable.Range(0, csv.RowFieldCount).Select(csv.GetString)];
}
