using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Checks;

/// <summary>Rows of a table (RFC 4180) whose first line names the columns. A quoted cell may hold separators and quotes, but no line end.</summary>
public sealed class CsvRows : IRowForm
{
    private static readonly string[] s_needed = ["at", "value", "unit"];

    private readonly byte _separator;
    private readonly int[] _fields;

    private CsvRows(byte separator, int[] fields)
    {
        _separator = separator;
        _fields = fields;
    }

    /// <summary>Reads the first line.</summary>
    /// <param name="line">The names of the columns, in any order.</param>
    /// <param name="rows">The form of the lines that follow.</param>
    /// <returns>What is wrong with it, or null.</returns>
    public static CheckFault? Begin(ReadOnlySpan<byte> line, out CsvRows? rows)
    {
        rows = null;
        if (line.IsEmpty)
            return Nameless(line, "at");
        if (line.StartsWith("\uFEFF"u8))
            line = line[3..];
        var separator = Separator(line);
        var names = System.Text.Encoding.UTF8.GetString(line).Split((char)separator).Select(n => n.Trim().Trim('"')).ToArray();
        if (names.FirstOrDefault(n => !CheckRow.Names.Contains(n)) is { } unknown)
            return CheckFault.Unknown(unknown, FieldProblems.UnknownField, System.Text.Encoding.UTF8.GetBytes(unknown), CheckRow.Names);
        if (names.GroupBy(n => n).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return CheckFault.In(twice.Key, FieldProblems.DuplicateField, default, "each column once");
        if (s_needed.FirstOrDefault(n => !names.Contains(n)) is { } missing)
            return Nameless(line, missing);
        rows = new CsvRows(separator, [.. names.Select(n => Array.IndexOf(CheckRow.Names, n))]);
        return null;
    }

    /// <inheritdoc/>
    public CheckFault? Read(ReadOnlySpan<byte> line, ref CheckRow row)
    {
        for (var column = 0; ; column++)
        {
            if (column == _fields.Length)
                return CheckFault.In("", Problems.MalformedCsv, line, $"at most {_fields.Length} cells, as the first line has");
            if (!Cell(ref line, out var cell, out var last))
                return CheckFault.In(CheckRow.Names[_fields[column]], Problems.MalformedCsv, line, "a closing quote, and then a separator");
            row.Set(_fields[column], cell);
            if (last)
                return null;
        }
    }

    private static CheckFault Nameless(ReadOnlySpan<byte> line, string column) =>
        CheckFault.In(column, FieldProblems.MissingField, line, "a first line that names the columns, at least at, value and unit");

    private static byte Separator(ReadOnlySpan<byte> line) =>
        line.Contains((byte)';') ? (byte)';' : line.Contains((byte)'\t') ? (byte)'\t' : (byte)',';

    private bool Cell(scoped ref ReadOnlySpan<byte> line, out ReadOnlySpan<byte> cell, out bool last)
    {
        if (line is [(byte)'"', ..])
            return Quoted(ref line, out cell, out last);
        var end = line.IndexOf(_separator);
        last = end < 0;
        cell = (last ? line : line[..end]).Trim((byte)' ');
        line = last ? default : line[(end + 1)..];
        return true;
    }

    private bool Quoted(scoped ref ReadOnlySpan<byte> line, out ReadOnlySpan<byte> cell, out bool last)
    {
        cell = default;
        last = false;
        var doubled = false;
        for (var i = 1; i < line.Length; i++)
        {
            if (line[i] != '"')
                continue;
            if (i + 1 < line.Length && line[i + 1] == '"')
            {
                (doubled, i) = (true, i + 1);
                continue;
            }

            cell = line[1..i];
            if (doubled)
                cell = System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(cell).Replace("\"\"", "\"", StringComparison.Ordinal));
            last = i + 1 == line.Length;
            if (!last && line[i + 1] != _separator)
                return false;
            line = last ? default : line[(i + 2)..];
            return true;
        }

        return false;
    }
}
