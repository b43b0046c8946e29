using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>The teardown sheet to print and fill in by hand.</summary>
public static class SheetPage
{
    /// <summary>The page.</summary>
    public static IResult Of(FamilyIndex index, Display show) => Page.Of($"{show.Words(index.Family.Name)}: teardown sheet", $"""
        <p>{Page.Safe(index.Family.Version.Id)} {Page.Safe(index.Family.Version.SemVer)}. Unit: ____________ Person: ____________ Bench: ____________ Date: ____________</p>
        <ul>{string.Concat(index.Family.Cautions.Select(c => $"<li>{Page.Safe(show.Words(c))}</li>"))}</ul>
        {string.Concat(new Sheet(index, show).Rows().GroupBy(r => r.Group).Select(g => Table(g.Key, g)))}
        """);

    private static string Table(string group, IEnumerable<SheetRowWire> rows) => $"""
        <h2>{Page.Safe(group)}</h2>
        <table><thead><tr><th>Row</th><th>Part</th><th>Look at or read</th><th>Choices</th><th>Limits</th><th style="width:12rem">Found</th></tr></thead>
        <tbody>{string.Concat(rows.Select(Row))}</tbody></table>
        """;

    private static string Row(SheetRowWire row) => $"""
        <tr><td>{row.Row}</td><td>{Page.Safe(row.Part)}<br><code>{Page.Safe(row.Position)}</code></td>
        <td>{Page.Safe(row.Question)}<br><code>{Page.Safe(row.Id)}</code></td><td>{Page.Safe(row.Choices)}</td><td>{Page.Safe(Limits(row))}</td><td></td></tr>
        """;

    private static string Limits(SheetRowWire row) => (row.Low, row.High) switch
    {
        ({ } low, { } high) => $"{low.Text} to {high.Text} {row.LimitUnit}",
        ({ } low, null) => $"at least {low.Text} {row.LimitUnit}",
        (null, { } high) => $"at most {high.Text} {row.LimitUnit}",
        _ => row.LimitUnit ?? "",
    };
}
