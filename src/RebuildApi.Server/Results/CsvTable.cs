using System.Globalization;
using System.Text;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;

namespace RebuildApi.Server.Results;

/// <summary>A table of records, its columns taken from the record.</summary>
public sealed class CsvTable<T>(char separator, bool bom)
{
    private readonly Column<T>[] _columns = [.. Columns.Of<T>()];

    /// <summary>The table that a request asks for.</summary>
    public static CsvTable<T> Asked(HttpContext http)
    {
        var separator = QueryText.Word(http, "sep", ",", ";", "tab") switch { ";" => ';', "tab" => '\t', _ => ',' };
        return new CsvTable<T>(separator, QueryText.Flag(http, "bom"));
    }

    /// <summary>Writes to a stream.</summary>
    public IRowWriter<T> Rows(Stream stream) => new Writer(this, stream);

    private string Header() => string.Join(separator, _columns.Select(c => CsvCell.Text(c.Name, separator)));

    private string Row(T item) => string.Join(separator, _columns.Select(c => Cell(c, item)));

    private string Cell(Column<T> column, T item)
    {
        var text = column.Read(item) ?? "";
        return column.IsNumber ? CsvCell.Number(text, separator) : CsvCell.Text(text, separator);
    }

    // The last row fills the first columns, so that it stays a row of the same table.
    private string Last(int count)
    {
        string[] cells = ["#end", count.ToString(CultureInfo.InvariantCulture)];
        return string.Join(separator, cells.Concat(Enumerable.Repeat("", Math.Max(0, _columns.Length - cells.Length))).Take(Math.Max(2, _columns.Length)));
    }

    private sealed class Writer(CsvTable<T> table, Stream stream) : IRowWriter<T>
    {
        public Task Begin(CancellationToken cancellation) => Line((table.WithBom ? "\uFEFF" : "") + table.Header(), cancellation);

        public Task Write(T item, CancellationToken cancellation) => Line(table.Row(item), cancellation);

        public Task End(int count, CancellationToken cancellation) => Line(table.Last(count), cancellation);

        private async Task Line(string line, CancellationToken cancellation) =>
            await stream.WriteAsync(Encoding.UTF8.GetBytes(line + "\r\n"), cancellation);
    }

    private bool WithBom { get; } = bom;
}
