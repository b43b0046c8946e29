using System.Collections.Frozen;

namespace RebuildApi.Server.Requests;

/// <summary>One row of a filled-in sheet.</summary>
/// <param name="Line">Its line in the file, the header being 1.</param>
/// <param name="Cells">Column to text, empty cells left out.</param>
/// <param name="Person">Who, from this row or one before.</param>
/// <param name="Bench">Where, from this row or one before.</param>
public sealed record SheetRow(int Line, FrozenDictionary<string, string> Cells, string? Person, string? Bench)
{
    /// <summary>The cells that hold what was found.</summary>
    public static readonly string[] Values = ["value1", "value2", "value3", "value4", "value5", "value6"];

    /// <summary>A pointer to the row.</summary>
    public string Pointer => FormattableString.Invariant($"row/{Line}");

    /// <summary>The text of a cell, or null.</summary>
    public string? this[string column] => Cells.GetValueOrDefault(column);

    /// <summary>Whether anything was filled in.</summary>
    public bool IsFilled => Values.Any(Cells.ContainsKey);

    /// <summary>Whether it is of a sort; a table without the column is all of the sort that is asked for.</summary>
    public bool Is(params ReadOnlySpan<string> whats) => this["what"] is not { } what || whats.Contains(what);
}
