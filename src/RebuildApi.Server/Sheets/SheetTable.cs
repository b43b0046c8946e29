using System.Collections.Frozen;
using System.Collections.Immutable;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Requests;
using RebuildApi.Server.Requests.Tables;
using RebuildApi.Server.Results;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Sheets;

/// <summary>
/// A filled-in sheet, row by row, whichever file it came in. Columns may be in any order and may be left out, but unknown ones are refused. Who and
/// where stand until another row says otherwise.
/// </summary>
public sealed class SheetTable
{
    private const int MostRows = 5000;
    private const string EndMark = "#end";

    private static readonly FrozenSet<string> Known = Columns.Of<SheetRowWire>().Select(c => c.Name).ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private readonly string[] _names;
    private readonly Problem _malformed;
    private readonly ImmutableArray<SheetRow>.Builder _rows = ImmutableArray.CreateBuilder<SheetRow>();
    private string? _person;
    private string? _bench;

    /// <summary>Begins with the header row.</summary>
    /// <param name="names">The names of the columns.</param>
    /// <param name="malformed">The problem of a table that can't be used.</param>
    /// <exception cref="ProblemException">It has unknown columns, or lacks the one that is needed.</exception>
    public SheetTable(IEnumerable<string> names, Problem malformed)
    {
        (_names, _malformed) = ([.. names.Select(n => n.Trim())], malformed);
        var complaints = new Complaints();
        foreach (var name in _names.Where(n => !Known.Contains(n)))
            complaints.AddUnknown("row/1/" + name, FieldProblems.UnknownField, $"There is no column {name}.", name, Known);
        foreach (var twice in _names.GroupBy(n => n, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
            complaints.Add("row/1/" + twice.Key, FieldProblems.DuplicateField, $"The column {twice.Key} is there twice.");
        if (!_names.Contains("position", StringComparer.OrdinalIgnoreCase))
            complaints.Add("row/1/position", FieldProblems.MissingField, "The column position is missing.");
        complaints.ThrowIfAny(malformed);
    }

    /// <summary>The rows so far.</summary>
    public ImmutableArray<SheetRow> Rows => _rows.ToImmutable();

    /// <summary>Takes the next row; false at the row that ends the table.</summary>
    /// <exception cref="ProblemException">There are too many.</exception>
    public bool Take(int line, IReadOnlyList<string> texts)
    {
        if (texts.Count > 0 && texts[0] == EndMark)
            return false;
        if (_rows.Count == MostRows)
            throw new ProblemException(_malformed, $"The table has more than {MostRows} rows.");
        var cells = _names.Take(texts.Count).Select((name, i) => (Name: name, Text: CsvCell.Unguarded(texts[i].Trim()))).Where(c => c.Text.Length > 0)
            .ToFrozenDictionary(c => c.Name, c => c.Text, StringComparer.OrdinalIgnoreCase);
        _person = cells.GetValueOrDefault("person") ?? _person;
        _bench = cells.GetValueOrDefault("bench") ?? _bench;
        _rows.Add(new SheetRow(line, cells, _person, _bench));
        return true;
    }
}
