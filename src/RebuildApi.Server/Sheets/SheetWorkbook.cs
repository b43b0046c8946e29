using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Xml;
using MiniExcelLibs;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;

namespace RebuildApi.Server.Sheets;

/// <summary>Reads the first sheet of a filled-in workbook. What it unfolds to is bounded before anything is read from it.</summary>
public static class SheetWorkbook
{
    private const int MostParts = 100;
    private const int MostUnfolded = 32 << 20;
    private const int MostColumns = 100;

    /// <summary>The rows.</summary>
    /// <exception cref="ProblemException">It is no workbook, unfolds to too much, or has unknown columns.</exception>
    public static ImmutableArray<SheetRow> Read(ReadOnlyMemory<byte> bytes)
    {
        try
        {
            CheckSize(bytes);
            using var stream = new MemoryStream(bytes.ToArray());
            return Rows(stream.Query(useHeaderRow: false, excelType: ExcelType.XLSX).Cast<IDictionary<string, object?>>().Select(Texts));
        }
        catch (Exception broken) when (IsBroken(broken))
        {
            throw new ProblemException(Problems.MalformedWorkbook, "The workbook breaks: " + broken.Message);
        }
    }

    private static ImmutableArray<SheetRow> Rows(IEnumerable<string[]> rows)
    {
        SheetTable? table = null;
        foreach (var (i, texts) in rows.Index())
        {
            if (table is null)
                table = new SheetTable(texts.Reverse().SkipWhile(t => t.Length == 0).Reverse(), Problems.MalformedWorkbook);
            else if (!table.Take(i + 1, texts))
                break;
        }

        return table?.Rows ?? throw new ProblemException(Problems.MalformedWorkbook, "The first sheet is empty.");
    }

    private static string[] Texts(IDictionary<string, object?> row) => row.Count <= MostColumns
        ? [.. row.Values.Select(Text)]
        : throw new ProblemException(Problems.MalformedWorkbook, $"The first sheet has more than {MostColumns} columns.");

    private static string Text(object? cell) => cell switch
    {
        null => "",
        bool truth => truth ? "true" : "false",
        double number when Math.Abs(number) < 1e15 => ((decimal)number).ToString(CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };

    // What a part says of its own size is not believed: it is unfolded and counted.
    private static void CheckSize(ReadOnlyMemory<byte> bytes)
    {
        using var zip = new ZipArchive(new MemoryStream(bytes.ToArray()), ZipArchiveMode.Read);
        if (zip.Entries.Count > MostParts)
            throw new ProblemException(Problems.MalformedWorkbook, $"The workbook has more than {MostParts} parts.");
        var left = MostUnfolded;
        var chunk = new byte[81920];
        foreach (var part in zip.Entries)
        {
            using var unfolded = part.Open();
            for (int read; (read = unfolded.Read(chunk)) > 0; left -= read)
            {
                if (read > left)
                    throw new ProblemException(Problems.MalformedWorkbook, $"The workbook unfolds to more than {MostUnfolded >> 20} MiB.");
            }
        }
    }

    // A file from elsewhere can break its reader in many ways; none of them is a fault of the service.
    private static bool IsBroken(Exception e) => e is InvalidDataException or XmlException or FormatException or IOException or ArgumentException or KeyNotFoundException
        or InvalidOperationException or NullReferenceException or IndexOutOfRangeException or InvalidCastException or OverflowException or NotSupportedException;
}
