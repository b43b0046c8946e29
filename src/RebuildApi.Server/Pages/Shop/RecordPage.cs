using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;

namespace RebuildApi.Server.Pages;

/// <summary>What goes out with a gearbox, to print and sign: the hand-over record, and the sheet to build it by.</summary>
public static class RecordPage
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);

    /// <summary>Serves the pages.</summary>
    public static void MapRecordPage(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/units/{unit}/record", Record);
        routes.MapPage("/units/{unit}/assembly", Assembly);
    }

    private static async Task<IResult> Record(string unit, Composition.Bench bench, Judging judging, CancellationToken cancellation)
    {
        var w = PageWords.English;
        var judged = judging.Judge(await bench.File(unit, cancellation));
        var sheet = new AnswerSheet(judged, Metric);
        return new Frame(w, w["record.title", ("tag", judged.File.Unit.Tag)], "bench", $"""
            {Head(judged, bench.Time.GetUtcNow(), w)}
            <h2>{Page.Safe(w["record.parts"])}</h2>
            {Table([w["record.part"], w["record.read"], w["record.value"], w["record.limits"], w["record.outcome"]], sheet.Parts.Where(p => p.Component is not null).SelectMany(p => Part(p, w)), w)}
            <p class="soft">{Page.Safe(w["record.uncertainty"])}</p>
            <h2>{Page.Safe(w["record.clearances"])}</h2>
            {Table([w["assembly.clearance"], w["record.value"], w["assembly.window"], w["record.outcome"]], sheet.Clearances.Select(c => Clearance(c, w)), w)}
            <h2>{Page.Safe(w["record.decisions"])}</h2>{Decisions(judged, w)}
            <h2>{Page.Safe(w["record.instruments"])}</h2><ul>{string.Concat(judged.File.Instruments.Select(i => Instrument(i.Name, i.State, w)))}</ul>
            <h2>{Page.Safe(w["record.cautions"])}</h2><ul>{string.Concat(Cautions.Of(judged.Family, Metric).Select(c => $"<li>{Page.Safe(c)}</li>"))}</ul>
            {Signatures(w, "record.builder", "record.checker", "record.tester", "record.receiver")}
            """);
    }

    private static async Task<IResult> Assembly(string unit, Composition.Bench bench, Judging judging, CancellationToken cancellation)
    {
        var w = PageWords.English;
        var judged = judging.Judge(await bench.File(unit, cancellation));
        var sheet = new AnswerSheet(judged, Metric);
        var open = sheet.Pairings.Where(p => p.Outcome != Compatibility.Compatible).ToArray();
        return new Frame(w, w["assembly.title", ("tag", judged.File.Unit.Tag)], "bench", $"""
            {Head(judged, bench.Time.GetUtcNow(), w)}
            <ul>{string.Concat(Cautions.Of(judged.Family, Metric).Select(c => $"<li>{Page.Safe(c)}</li>"))}</ul>
            {Table([w["assembly.clearance"], w["assembly.window"], w["assembly.piece"], w["assembly.found"]], sheet.Clearances.Select(c => ToBuild(c, w)), w)}
            <h2>{Page.Safe(w["assembly.pairings"])}</h2>
            {(open.Length == 0 ? $"<p>{Page.Safe(w["assembly.holds"])}</p>" : $"<ul>{string.Concat(open.Select(p => $"<li>☐ {Page.Safe(p.Name)} {w.Outcome(p.Outcome)}</li>"))}</ul>")}
            {Signatures(w, "record.builder", "record.checker")}
            """);
    }

    private static string Head(Judged judged, DateTimeOffset now, PageWords w)
    {
        var unit = judged.File.Unit;
        var rules = judged.Answers.Rules;
        return $"""
            <p>{Page.Safe(w["record.of", ("tag", unit.Tag), ("family", judged.Family.Family.Name.In("en")), ("version", unit.Family.SemVer), ("when", now.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture))])}
            {(unit.Customer is { } customer ? Page.Safe(w["record.customer", ("customer", customer)]) : "")}</p>
            <p class="soft">{Page.Safe(w["record.rules", ("hash", rules.DeclarationSha256[..12]), ("engine", rules.Engine), ("policy", judged.View.Snapshot.Policy.Version), ("inputs", judged.View.InputsSha256[..12])])}</p>
            """;
    }

    private static IEnumerable<string> Part(PartVerdictWire part, PageWords w)
    {
        yield return $"<tr><th scope=\"row\">{Page.Safe(part.Name)}<br><span class=\"soft\">{Page.Safe(part.Subject)}</span></th><td></td><td></td><td></td><td>{w.Outcome(part.Outcome)} {Page.Safe(w["d." + Kebab.Of(part.Disposition)])}</td></tr>\n";
        foreach (var v in part.Verdicts.Where(v => v.Value is not null))
            yield return $"<tr><td></td><td>{Page.Safe(v.Subject.Split('/')[^1])}</td><td class=\"n\">{Page.Safe(Shown.Of(v.Value))}</td><td class=\"n\">{Page.Safe(Shown.Of(v.Against))}</td><td>{w.Outcome(v.Outcome)}</td></tr>\n";
    }

    private static string Clearance(ClearanceWire c, PageWords w) =>
        $"<tr><th scope=\"row\">{Page.Safe(c.Name)}</th><td class=\"n\">{Page.Safe(Shown.Of(c.Gap))}</td><td class=\"n\">{Page.Safe(Shown.Of(c.Verdict.Against))}</td><td>{w.Outcome(c.Outcome)}</td></tr>\n";

    private static string ToBuild(ClearanceWire c, PageWords w)
    {
        var piece = c.Ring switch
        {
            { Outcome: "fits", Ranked: [var best, ..] } => w["unit.ring", ("members", string.Join(" + ", best.Members)), ("thickness", Shown.Of(best.Thickness))],
            { Cuts: [var cut, ..] } => w["unit.cut", ("operation", cut.Operation), ("at", cut.At), ("cut", Shown.Of(cut.ToEnter)), ("permission", cut.Permission)],
            _ => "",
        };
        return $"<tr><th scope=\"row\">{Page.Safe(c.Name)}</th><td class=\"n\">{Page.Safe(Shown.Of(c.Verdict.Against))}</td><td>{Page.Safe(piece)}</td><td>☐ ______________</td></tr>\n";
    }

    private static string Decisions(Judged judged, PageWords w) => judged.File.Decisions.IsEmpty
        ? $"<p>{Page.Safe(w["record.none"])}</p>"
        : $"<ul>{string.Concat(judged.File.Decisions.Select(d => $"<li><strong>{Page.Safe(d.Subject)}</strong> {Page.Safe(w["unit.decided", ("person", d.Person), ("choice", d.Choice), ("reason", d.Reason)])}</li>"))}</ul>";

    private static string Instrument(string name, InstrumentState state, PageWords w)
    {
        var due = state.CalibrationDue is { } day ? "; " + w["record.valid", ("date", day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))] : "";
        return $"<li>{Page.Safe(name)} ({Page.Safe(state.Id)}): {Page.Safe(w["record.resolution", ("step", Shown.Of(state.Resolution))] + due)}</li>";
    }

    private static string Table(string[] heads, IEnumerable<string> rows, PageWords w)
    {
        var inside = string.Concat(rows);
        return inside.Length == 0
            ? $"<p>{Page.Safe(w["record.none"])}</p>"
            : $"<div class=\"scroll\"><table><thead><tr>{string.Concat(heads.Select(h => $"<th scope=\"col\">{Page.Safe(h)}</th>"))}</tr></thead><tbody>{inside}</tbody></table></div>";
    }

    private static string Signatures(PageWords w, params string[] keys) => $"<div class=\"sign\">{string.Concat(keys.Select(k => $"<div>{Page.Safe(w[k])}</div>"))}</div>";
}
