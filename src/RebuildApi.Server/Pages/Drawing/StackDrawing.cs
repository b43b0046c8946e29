using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>
/// One clearance as a stack: what opens the gap in one row, what fills it in the other, both to one scale, and the gap they leave to a scale of its
/// own with its window, its value and twice its standard uncertainty on both sides. Alone it says its name and what brings the gap right; on a page that
/// stands beside it.
/// </summary>
public sealed class StackDrawing(ClearanceAnswer answer, FamilyIndex family, PageWords words, bool isAlone = false)
{
    private const double Width = 720;
    private const double Left = 10;
    private const double Right = 710;
    private const double RowHeight = 26;
    private const double Unread = 30;

    private readonly Sketch _sketch = new(Width, Title(answer, family, words));
    private readonly Spoken _named = new(family, words.Language);

    /// <summary>The drawing.</summary>
    public Drawn Draw()
    {
        var terms = answer.Terms.Select((t, i) => new Member(i + 1, t, Thickness(t))).ToArray();
        if (isAlone)
            _sketch.Text(Left, 20, _sketch.Title, size: 15);
        var y = Rows(terms, isAlone ? 36 : 8);
        y = Legend(terms, y);
        return new Drawn(_sketch, GapScale(y));
    }

    private double Rows(Member[] terms, double top)
    {
        var opening = terms.Where(t => t.Opens).ToArray();
        var filling = terms.Where(t => !t.Opens).ToArray();
        var longest = Math.Max(Math.Max(opening.Sum(t => t.Metres ?? 0), filling.Sum(t => t.Metres ?? 0)), 1e-6);
        var unread = Math.Max(opening.Count(t => t.Metres is null), filling.Count(t => t.Metres is null));
        var perMetre = (Right - Left - 130 - unread * Unread) / longest;
        Row(opening, top, perMetre, words["draw.opens"]);
        Row(filling, top + RowHeight + 6, perMetre, words["draw.fills"]);
        _sketch.Text(Left, top + 2 * RowHeight + 24, words["draw.to-scale"], size: 11);
        return top + 2 * RowHeight + 42;
    }

    private void Row(Member[] members, double y, double perMetre, string label)
    {
        var x = Left + 110;
        _sketch.Text(Left, y + 18, label);
        foreach (var member in members)
        {
            var w = member.Metres is { } m ? m * perMetre : Unread;
            _sketch.Box(x, y, w, RowHeight, Sketch.Part, member.Opens ? 0.15 : 0.35, member.Metres is null || member.IsSeries ? Outline.Dashed : Outline.Whole);
            if (w > 12)
                _sketch.Text(x + w / 2, y + 18, member.Number.ToString(CultureInfo.InvariantCulture), "middle");
            x += w;
        }
    }

    private double Legend(Member[] members, double y)
    {
        foreach (var member in members)
        {
            var value = member.Metres is { } m ? Shown.Of(new Exact(Length.NearestToMetres(m))) : words["draw.unknown"];
            _sketch.Text(Left, y, string.Create(CultureInfo.InvariantCulture, $"{member.Number}  {(member.Opens ? "+" : "−")} {NameOf(member.Value)}: {value}"), size: 12);
            y += 17;
        }

        var advice = isAlone ? new Advice(_named, words).Of(answer.IsWithoutPieces || answer.Verdict.Outcome != Outcome.Conforming ? answer.Ring : null) : [];
        foreach (var line in advice.SelectMany(a => Ink.Lines("→ " + a, 12, (float)(Right - Left))))
        {
            _sketch.Text(Left, y + 3, line, size: 12);
            y += 17;
        }

        return y + 14;
    }

    private double GapScale(double y)
    {
        var window = family.Loops[answer.Verdict.Subject].Window;
        var gap = answer.Combined.Value?.InSi;
        var u = 2 * answer.Combined.StandardUncertainty;
        var ends = new[] { window.Low?.InSi, window.High?.InSi, window.Target?.InSi, gap - u, gap + u, 0 }.OfType<double>();
        var scale = Scale.Around(ends, Left + 20, Right - 20);
        WindowBand(window, scale, y);
        _sketch.Line(Left, y + 44, Right, y + 44);
        if (gap is { } known)
            Value(known, u, scale, y);
        else
            _sketch.Text((Left + Right) / 2, y + 92, words["draw.no-gap"], "middle");
        return y + 104;
    }

    private void WindowBand(Limits window, Scale scale, double y)
    {
        var (low, high) = (scale.At(window.Low?.InSi ?? double.MinValue), scale.At(window.High?.InSi ?? double.MaxValue));
        _sketch.Band(low, y + 16, high - low, 28, Sketch.Window, 0.3);
        _sketch.Text((low + high) / 2, y + 34, words["draw.window"], "middle", 11);
        End(window.Low, low, y, high - low < 150 ? "end" : "middle");
        End(window.High, high, y, high - low < 150 ? "start" : "middle");
        if (window.Target is { } target)
            _sketch.Line(scale.At(target.InSi), y + 36, scale.At(target.InSi), y + 52, 2, dashed: true);
    }

    private void End(Quantity? end, double x, double y, string anchor)
    {
        if (end is null)
            return;
        _sketch.Line(x, y + 14, x, y + 46, 3);
        _sketch.Text(Math.Clamp(x, Left + 40, Right - 40), y + 8, Shown.Of(end), anchor, 12);
    }

    private void Value(double gap, double u, Scale scale, double y)
    {
        var x = scale.At(gap);
        _sketch.Band(scale.At(gap - u), y + 50, scale.At(gap + u) - scale.At(gap - u), 16, Sketch.Doubt, 0.5);
        _sketch.Mark(x, y + 58, Sketch.Of(answer.Verdict.Outcome));
        var said = $"{words["draw.gap"]} {Shown.Of(EstimateWire.From(answer.Combined, new Display(false, false)))}: {words["o." + Kebab.Of(answer.Verdict.Outcome)]}";
        _sketch.Text(Math.Clamp(x, 170, Width - 170), y + 90, said, "middle");
    }

    private string NameOf(TermValue term) => term.Term.Of is OfSeries series ? _named.Subject(series.Position) : _named.Subject(term.Name);

    // A piece that is still to be chosen is drawn as the one that would be chosen first, dashed.
    private double? Thickness(TermValue term)
    {
        var factor = Math.Abs((double)term.Term.Numerator / term.Term.Denominator);
        if (term.Term.Of is OfSeries && answer.IsWithoutPieces)
            return answer.Ring?.Ranked.FirstOrDefault()?.Thickness.InMetres * factor;
        return term.Estimate.Value?.InSi * factor;
    }

    private static string Title(ClearanceAnswer answer, FamilyIndex family, PageWords words) =>
        $"{family.Loops[answer.Verdict.Subject].Name.In(words.Language)}: {words["o." + Kebab.Of(answer.Verdict.Outcome)]}";

    private sealed record Member(int Number, TermValue Value, double? Metres)
    {
        public bool Opens => Value.Term.Numerator > 0;

        public bool IsSeries => Value.Term.Of is OfSeries;
    }
}
