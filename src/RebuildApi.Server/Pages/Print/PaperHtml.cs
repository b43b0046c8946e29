using System.Collections.Immutable;

namespace RebuildApi.Server.Pages;

/// <summary>A paper as the content of a page.</summary>
public static class PaperHtml
{
    /// <summary>Everything below the title.</summary>
    public static string Of(Paper paper) => string.Concat(paper.Blocks.Select(Written));

    private static string Written(Block block) => block switch
    {
        Heading h => $"<h2>{Page.Safe(h.Text)}</h2>\n",
        Prose p => $"<p{(p.IsSoft ? " class=\"soft\"" : "")}>{Page.Safe(p.Text)}</p>\n",
        Bullets b => $"<ul>{string.Concat(b.Items.Select(i => $"<li>{Page.Safe(i)}</li>"))}</ul>\n",
        Picture p => $"<figure>{p.Drawing.Inside}</figure>\n",
        Signatures s => $"<div class=\"sign\">{string.Concat(s.Words.Select(w => $"<div>{Page.Safe(w)}</div>"))}</div>\n",
        Grid { Rows.IsEmpty: true } g => $"<p>{Page.Safe(g.Empty)}</p>\n",
        Grid g => $"<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Page.Safe(g.Columns[0].Head)}\"><table><thead><tr>{string.Concat(g.Columns.Select(c => $"<th scope=\"col\">{Page.Safe(c.Head)}</th>"))}</tr></thead><tbody>{string.Concat(g.Rows.Select(r => Written(r, g.Columns)))}</tbody></table></div>\n",
        _ => "",
    };

    private static string Written(Row row, ImmutableArray<Column> columns) =>
        $"<tr{(row.IsHead ? " class=\"head\"" : "")}>{string.Concat(columns.Select((c, i) => Written(row.Cells.ElementAtOrDefault(i), c, row.IsHead && i == 0)))}</tr>\n";

    private static string Written(Cell? cell, Column column, bool isHead)
    {
        var inside = cell is null ? "" : cell.Outcome is { } o ? $"<span class=\"o o-{o}\">{Page.Safe(cell.Text)}</span>" : Page.Safe(cell.Text);
        return isHead ? $"<th scope=\"row\">{inside}</th>" : $"<td{(column.IsNumber ? " class=\"n\"" : "")}>{inside}</td>";
    }
}
