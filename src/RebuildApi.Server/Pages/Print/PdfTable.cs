using SkiaSharp;

namespace RebuildApi.Server.Pages;

/// <summary>A table on as many sheets as it takes: its head again on each, rows whole where they fit on one sheet, and cut between lines where they don't.</summary>
public sealed class PdfTable
{
    private const float Size = 8;
    private const float LineHeight = 10.2f;
    private const float Pad = 3;

    private readonly Grid _grid;
    private readonly Sheets _sheets;
    private readonly float[] _widths;
    private readonly string[][] _head;

    /// <summary>Lays the columns out.</summary>
    public PdfTable(Grid grid, Sheets sheets)
    {
        (_grid, _sheets) = (grid, sheets);
        var all = grid.Columns.Sum(c => c.Share);
        _widths = [.. grid.Columns.Select(c => (float)(c.Share / all) * Sheets.Width)];
        _head = Lines(Row.Of([.. grid.Columns.Select(c => c.Head)]), true);
    }

    /// <summary>Prints it.</summary>
    public void Print()
    {
        _sheets.Need(HeightOf(_head) + 3 * LineHeight);
        PrintHead();
        foreach (var row in _grid.Rows)
            PrintRow(Lines(row, row.IsHead), row);
        _sheets.Y += 8;
    }

    private void PrintHead()
    {
        Slice(_head, 0, Depth(_head), true);
        Ink.Rule(_sheets.Canvas, Sheets.Left, Sheets.Left + Sheets.Width, _sheets.Y, 1);
    }

    private void PrintRow(string[][] lines, Row row)
    {
        // A row that heads others does not stand alone at the foot of a sheet.
        var together = HeightOf(lines) + (row.IsHead ? 2 * LineHeight : 0);
        if (together <= Sheets.Most - HeightOf(_head) && _sheets.Need(together))
            PrintHead();
        for (var from = 0; from < Depth(lines);)
        {
            if (_sheets.Room < LineHeight + 2 * Pad)
            {
                _sheets.Turn();
                PrintHead();
            }

            var count = Math.Min(Depth(lines) - from, Math.Max(1, (int)((_sheets.Room - 2 * Pad) / LineHeight)));
            Slice(lines, from, count, row.IsHead);
            from += count;
        }

        Ink.Rule(_sheets.Canvas, Sheets.Left, Sheets.Left + Sheets.Width, _sheets.Y, 0.3f);
    }

    private void Slice(string[][] lines, int from, int count, bool bold)
    {
        var x = Sheets.Left;
        for (var c = 0; c < lines.Length; c++)
        {
            var right = _grid.Columns[c].IsNumber;
            for (var i = 0; i < count && from + i < lines[c].Length; i++)
            {
                var at = _sheets.Y + Pad + (i + 1) * LineHeight - 2.4f;
                Ink.Line(_sheets.Canvas, lines[c][from + i], right ? x + _widths[c] - Pad : x + Pad, at, Size, bold, right ? SKTextAlign.Right : SKTextAlign.Left);
            }

            x += _widths[c];
        }

        _sheets.Y += count * LineHeight + 2 * Pad;
    }

    private string[][] Lines(Row row, bool bold)
    {
        using var font = Fonts.At(Size, bold);
        return [.. _grid.Columns.Select((_, i) => row.Cells.ElementAtOrDefault(i) is { } cell
            ? Ink.Lines(cell.Sign + cell.Text, font, _widths[i] - 2 * Pad).ToArray()
            : [])];
    }

    private static int Depth(string[][] lines) => Math.Max(1, lines.Max(l => l.Length));

    private static float HeightOf(string[][] lines) => Depth(lines) * LineHeight + 2 * Pad;
}
