using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>All answers about one gearbox: what blocks it, its plan with kit and price, its clearances drawn, its shafts laid out.</summary>
public static class UnitPage
{
    private const int MostDrawings = 10;
    private const int MostBlocks = 12;

    /// <summary>Serves the page.</summary>
    public static void MapUnitPage(this IEndpointRouteBuilder routes) => routes.MapPage("/units/{unit}", Show);

    private static async Task<IResult> Show(string unit, Composition.Bench bench, Judging judging, PlanSection plans, StageSheet stages, PageWords w, CancellationToken cancellation)
    {
        var file = await bench.File(unit, cancellation);
        var title = w["unit.title", ("tag", file.Unit.Tag)];
        if (judging.WhyNot(file) is { } why)
            return new Frame(w, title, "bench", $"<p class=\"note\">{Page.Safe(w["bench.rules", ("why", why)])}</p>");
        var judged = judging.Judge(file);
        var named = new Spoken(judged.Family, w.Language);
        var gates = new GateWords(judged.Family, w);
        return new Frame(w, title, "bench", $"""
            <p id="changed" class="note" role="status" hidden>{Page.Safe(w["unit.changed"])} <a href="/units/{file.Unit.Id}">{Page.Safe(w["unit.reload"])}</a></p>
            {Head(judged, w)}
            {Who(w)}
            {new StageSection(await stages.Of(unit, cancellation), named, gates, w).Write()}
            {new SignOffSection(file, await bench.Store.All<SignOff>(new ShopFilter(unit), cancellation), gates, w).Write()}
            <h2>{Page.Safe(w["unit.blocks"])}</h2>{Blocks(judged, named, w)}
            <h2>{Page.Safe(w["unit.plan"])}</h2>{await plans.Of(judged, w, cancellation)}
            <h2>{Page.Safe(w["unit.clearances"])}</h2>{string.Concat(Worst(judged).Select((c, i) => Clearance(c, judged, i < MostDrawings && c.Combined.Value is not null, named, w)))}
            <h2>{Page.Safe(w["unit.parts"])}</h2>{new ShaftSection(judged, named, w).Write()}
            {new PhotoSection(file, await bench.Store.All<Attachment>(new ShopFilter(unit), cancellation), named, w).Write()}
            """, ["unit.js"], new { words = w.Script("unit.js"), unit = file.Unit.Id });
    }

    private static string Head(Judged judged, PageWords w)
    {
        var unit = judged.File.Unit;
        var missing = judged.Answers.Missing.Length.ToString(CultureInfo.InvariantCulture);
        var counts = judged.Answers.Parts.GroupBy(p => p.Outcome).OrderBy(g => g.Key).Select(g => $"<li>{w.Outcome(g.Key)} <strong>{g.Count().ToString(CultureInfo.InvariantCulture)}</strong></li>");
        var papers = PaperDesk.Kinds.Where(k => k != "quote").Select(k => $"<a class=\"button\" href=\"/units/{unit.Id}/{k}\">{Page.Safe(w["unit." + k])}</a>");
        return $"""
            <p>{Page.Safe(string.Join(" · ", new[] { judged.Family.Family.Name.In(w.Language), w["stage." + unit.Stage], unit.Customer, unit.Words }.OfType<string>()))}</p>
            <p class="row noprint"><a class="button main" href="/bench/{unit.Id}">{Page.Safe(w["unit.bench"])}</a>{string.Concat(papers)}</p>
            <ul class="counts">{string.Concat(counts)}</ul>
            <p class="soft">{Page.Safe(w["unit.missing", ("n", missing)])}</p>
            """;
    }

    // Who moves it on, signs or plans says so once for all forms of the page.
    private static string Who(PageWords w) => $"""
        <div class="row card noprint"><div><label for="person">{Page.Safe(w["home.person"])}</label><input id="person" maxlength="100" autocomplete="off"></div>
        <div><label for="bench">{Page.Safe(w["bench.place"])}</label><input id="bench" maxlength="100" autocomplete="off"></div></div><p id="told" role="status" class="soft"></p>
        """;

    private static string Blocks(Judged judged, Spoken named, PageWords w)
    {
        var all = judged.Answers.Blocks;
        if (all.IsEmpty)
            return $"<p><span class=\"o o-conforming\">{Page.Safe(w["unit.no-blocks"])}</span></p>";
        var rest = all.Length - MostBlocks;
        return $"<ul>{string.Concat(all.Take(MostBlocks).Select(b => $"<li><strong>{Page.Safe(named.Subject(b.Subject))}</strong> {Page.Safe(judged.Family.Say(b.Reason))}</li>"))}{(rest > 0 ? $"<li>{Page.Safe(w["shop.more", ("n", rest.ToString(CultureInfo.InvariantCulture))])}</li>" : "")}</ul>";
    }

    // What is known comes before what is not: an empty drawing helps nobody.
    private static IEnumerable<ClearanceAnswer> Worst(Judged judged) => judged.Answers.Clearances
        .OrderByDescending(c => c.Verdict.Outcome == Outcome.Nonconforming).ThenByDescending(c => c.Combined.Value is not null);

    private static string Clearance(ClearanceAnswer answer, Judged judged, bool drawn, Spoken named, PageWords w)
    {
        var loop = judged.Family.Loops[answer.Verdict.Subject];
        var address = $"/v1/units/{judged.File.Unit.Id}/clearances/{loop.Id}";
        var name = Page.Safe(named.Words(loop.Name));
        return $"""
            <figure class="card"><figcaption><h3>{name} {w.Outcome(answer.Verdict.Outcome)}</h3>{string.Concat(new Advice(named, w).Of(answer.Ring).Select(a => $"<p>→ {Page.Safe(a)}</p>"))}</figcaption>
            {(drawn ? new StackDrawing(answer, judged.Family, w).Draw().Inside : "")}
            <p class="soft">{Page.Safe(answer.Verdict.Reasons.IsEmpty ? "" : judged.Family.Say(answer.Verdict.Reasons[0]))} <a class="noprint" href="{address}.svg" aria-label="{name} SVG">SVG</a> <a class="noprint" href="{address}.png" aria-label="{name} PNG">PNG</a></p></figure>
            """;
    }
}
