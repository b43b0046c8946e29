using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;
using Sylvan.Data.Csv;

namespace RebuildApi.Server.Requests;

/// <summary>Reads a filled-in sheet. Separators are found out; columns may be in any order and may be left out, but unknown ones are refused.</summary>
public static class SheetCsv
{
    private const int MostRows = 5000;
    private const string EndMark = "#end";

    private static readonly FrozenSet<string> Known = Columns.Of<SheetRowWire>().Select(c => c.Name).ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>The rows.</summary>
    /// <exception cref="ProblemException">It is not a table, or has unknown columns.</exception>
    public static async Task<ImmutableArray<SheetRow>> Read(ReadOnlyMemory<byte> utf8, CancellationToken cancellation)
    {
        try
        {
            var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(utf8.Span).TrimStart('\uFEFF');
            using var reader = new StringReader(text);
            await using var csv = await CsvDataReader.CreateAsync(reader, new CsvDataReaderOptions { HasHeaders = true }, cancellation);
            return await Rows(csv, Header(csv), cancellation);
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

    private static string[] Header(CsvDataReader csv)
    {
        var names = Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetName(i).Trim()).ToArray();
        var complaints = new Complaints();
        foreach (var name in names.Where(n => !Known.Contains(n)))
            complaints.AddUnknown("row/1/" + name, FieldProblems.UnknownField, $"There is no column {name}.", name, Known);
        foreach (var twice in names.GroupBy(n => n, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            complaints.Add("row/1/" + twice.Key, FieldProblems.DuplicateField, $"The column {twice.Key} is there twice.");
        if (!names.Contains("position", StringComparer.OrdinalIgnoreCase))
            complaints.Add("row/1/position", FieldProblems.MissingField, "The column position is missing.");
        complaints.ThrowIfAny(Problems.MalformedCsv);
        return names;
    }

    private static async Task<ImmutableArray<SheetRow>> Rows(CsvDataReader csv, string[] names, CancellationToken cancellation)
    {
        var rows = ImmutableArray.CreateBuilder<SheetRow>();
        string? person = null, bench = null;
        for (var line = 2; await csv.ReadAsync(cancellation); line++)
        {
            if (rows.Count == MostRows)
                throw new ProblemException(Problems.MalformedCsv, $"The table has more than {MostRows} rows.");
            var cells = Cells(csv, names);
            if (csv.RowFieldCount > 0 && csv.GetString(0) == EndMark)
                break;
            person = cells.GetValueOrDefault("person") ?? person;
            bench = cells.GetValueOrDefault("bench") ?? bench;
            rows.Add(new SheetRow(line, cells, person, bench));
        }

        return rows.ToImmutable();
    }

    private static FrozenDictionary<string, string> Cells(CsvDataReader csv, string[] names) => names
        .Take(csv.RowFieldCount)
        .Select((name, i) => (Name: name, Text: CsvCell.Unguarded(csv.GetString(i).Trim())))
        .Where(c => c.Text.Length > 0)
        .ToFrozenDictionary(c => c.Name, c => c.Text, StringComparer.OrdinalIgnoreCase);
}
