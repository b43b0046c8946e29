using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Planning.Solving;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Pages;

/// <summary>
/// A plan as a strip for each shaft: a box for each place in stripping order, plain when its part stays, dashed when it is worked on, thick when another
/// goes in, with the sign of its outcome; below each strip in words what is not simply kept.
/// </summary>
public sealed class PlanDrawing(PlanWire plan, FamilyIndex family, Func<MoneyWire, string> money, PageWords words)
{
    private const double Width = 720;
    private const double Left = 12;
    private const double Box = 26;
    private const double Step = 32;
    private const int InRow = 21;

    private readonly Fitted _fitted = new(new Spoken(family, words.Language), words);
    private readonly Sketch _sketch = new(Width, words["draw.plan", ("objective", words["plan.by-" + plan.Objective])]);

    /// <summary>The drawing.</summary>
    public Drawn Draw()
    {
        _sketch.Text(Left, 22, _sketch.Title, size: 16);
        _sketch.Text(Left, 42, Summary(), size: 13);
        var y = Key(64);
        var lines = plan.Lines.Select((l, i) => new Numbered(i + 1, l)).ToArray();
        foreach (var group in lines.GroupBy(n => GroupOf(n.Line)))
            y = Strip(group.Key, [.. group], y);
        return new Drawn(_sketch, y);
    }

    private string Summary() => plan.Cost is { } cost
        ? words["draw.plan-sum", ("total", money(cost.Total)), ("minutes", Count(plan.Minutes)), ("days", Count(plan.ReadyInDays)), ("open", Count(plan.Conditions.Length))]
        : words[plan.Status == Kebab.Of(SolveStatus.Unknown) ? "draw.plan-unknown" : "draw.no-plan"];

    private double Key(double y)
    {
        var x = Left;
        foreach (var disposition in new[] { "reuse", "rework", "replace" })
        {
            Place(x, y, disposition);
            _sketch.Text(x + Box + 8, y + 18, words["d." + disposition], size: 12);
            x += 118;
        }

        foreach (var outcome in new[] { Outcome.Conforming, Outcome.Inconclusive, Outcome.NotAssessed })
        {
            _sketch.Mark(x + 8, y + 13, Sketch.Of(outcome));
            _sketch.Text(x + 22, y + 18, words["o." + Kebab.Of(outcome)], size: 12);
            x += 116;
        }

        return y + Box + 28;
    }

    private double Strip(string group, Numbered[] places, double y)
    {
        _sketch.Text(Left, y, group, size: 14);
        y += 8;
        for (var i = 0; i < places.Length; i++)
        {
            var (x, top) = (Left + i % InRow * Step, y + i / InRow * (Box + 24));
            Place(x, top, places[i].Line.Disposition);
            _sketch.Text(x + Box / 2, top + 17, Count(places[i].Number), "middle", 11);
            _sketch.Mark(x + Box / 2, top + Box + 11, SignOf(places[i].Line.Outcome));
        }

        y += (places.Length - 1) / InRow * (Box + 24) + Box + 36;
        foreach (var alike in places.Where(p => p.Line.Disposition != "reuse").GroupBy(p => Said(p.Line)))
        {
            _sketch.Text(Left, y, $"{string.Join(", ", alike.Select(p => Count(p.Number)))}  {alike.Key}", size: 12);
            y += 17;
        }

        return y + 14;
    }

    private void Place(double x, double y, string disposition) => _sketch.Box(
        x, y, Box, Box, disposition == "reuse" ? Sketch.Part : Sketch.Doubt, disposition == "replace" ? 0.35 : 0.12,
        disposition switch { "replace" => Outline.Thick, "rework" => Outline.Dashed, _ => Outline.Whole });

    private string Said(PlanLineWire line)
    {
        var price = line.Price is { } p ? ", " + money(p) : "";
        var days = line.LeadDays > 0 ? ", " + words["draw.in-days", ("days", Count(line.LeadDays))] : "";
        return $"{line.Name}: {words["d." + line.Disposition]}, {_fitted.Of(line)}{price}{days}";
    }

    private string GroupOf(PlanLineWire line) => family.Positions.TryGetValue(line.Position.Split('#')[0], out var place) ? place.Group : words["draw.pieces"];

    private static Sign SignOf(string outcome) =>
        outcome == Kebab.Of(Outcome.Conforming) ? Sign.Dot : outcome == Kebab.Of(Outcome.Nonconforming) ? Sign.Cross : outcome == Kebab.Of(Outcome.Inconclusive) ? Sign.Diamond : Sign.Ring;

    private static string Count(decimal number) => number.ToString("0.#", CultureInfo.InvariantCulture);

    private sealed record Numbered(int Number, PlanLineWire Line);
}
