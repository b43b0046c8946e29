namespace RebuildApi.Server.Pages;

/// <summary>Tables of a page, from cells that were made safe.</summary>
public static class Tables
{
    /// <summary>A table that may be scrolled sideways, by keyboard too.</summary>
    public static string Of(string name, string[] heads, IEnumerable<string> rows) =>
        $"<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Page.Safe(name)}\"><table><thead><tr>{string.Concat(heads.Select(h => $"<th scope=\"col\">{Page.Safe(h)}</th>"))}</tr></thead><tbody>{string.Concat(rows)}</tbody></table></div>";

    /// <summary>A row; the first cell names it.</summary>
    public static string Row(params string[] cells) =>
        $"<tr>{string.Concat(cells.Select((c, i) => i == 0 ? $"<th scope=\"row\">{c}</th>" : $"<td>{c}</td>"))}</tr>\n";
}
