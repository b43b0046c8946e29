using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>The teardown sheet to print and fill in by hand, in stripping order.</summary>
/// <param name="family">The family.</param>
/// <param name="tag">The gearbox, when it is for a certain one.</param>
/// <param name="show">In which units limits stand.</param>
/// <param name="w">The words.</param>
public sealed class TeardownPaper(FamilyIndex family, string? tag, Display show, PageWords w)
{
    private const string Blank = "____________";
    private readonly Spoken _named = new(family, w.Language);

    /// <summary>The paper.</summary>
    public Paper Write() => new(w["teardown.title", ("what", tag ?? family.Family.Name.In(w.Language))],
    [
        new Prose(w["teardown.of", ("family", family.Family.Name.In(w.Language)), ("version", family.Family.Version.SemVer), ("tag", tag ?? Blank)]),
        new Prose(w["teardown.sign", ("blank", Blank)]),
        new Bullets(Cautions.Of(family, show)),
        .. new Sheet(family, show).Rows().GroupBy(r => r.Group).SelectMany(Shaft),
    ]);

    private IEnumerable<Block> Shaft(IGrouping<string, SheetRowWire> shaft)
    {
        yield return new Heading(shaft.Key);
        yield return new Grid(
            PaperHead.Columns(w, ("teardown.row", 0.6), ("record.part", 2), ("teardown.question", 2.2), ("teardown.choices", 3), ("record.limits", 1.7), ("teardown.found", 2)),
            [.. shaft.Select(Line)], w["record.none"]);
    }

    private Row Line(SheetRowWire row) => Row.Of(
        row.Row.ToString(System.Globalization.CultureInfo.InvariantCulture), row.Part, row.Question, Choices(row), Limits(row), "");

    private string Choices(SheetRowWire row) => string.Join(" | ", row.Choices.Split(" | ", StringSplitOptions.RemoveEmptyEntries).Select(c => row.What switch
    {
        "inspection" => w.Damage(c),
        "attribute" => _named.Value(row.Position, row.Id, c),
        _ => c.Replace('-', ' '),
    }));

    private string Limits(SheetRowWire row) => (row.Low, row.High) switch
    {
        ({ } low, { } high) => $"{low.Text} {w["js.to"]} {high.Text} {row.LimitUnit}",
        ({ } low, null) => $"{w["js.atLeast"]} {low.Text} {row.LimitUnit}",
        (null, { } high) => $"{w["js.atMost"]} {high.Text} {row.LimitUnit}",
        _ => row.LimitUnit ?? "",
    };
}
