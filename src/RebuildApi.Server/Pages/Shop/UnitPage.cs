using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Judging;
using RebuildApi.Engine.Reasons;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Stages;

namespace RebuildApi.Server.Pages;

/// <summary>All answers about one gearbox: what blocks it, its parts in order with what they run with, its clearances drawn.</summary>
public static class UnitPage
{
    private const int MostDrawings = 10;
    private const int MostBlocks = 12;

    /// <summary>Serves the page.</summary>
    public static void MapUnitPage(this IEndpointRouteBuilder routes) => routes.MapPage("/units/{unit}", Show);

    private static async Task<IResult> Show(string unit, Composition.Bench bench, Judging judging, StageSheet stages, CancellationToken cancellation)
    {
        var w = PageWords.English;
        var file = await bench.File(unit, cancellation);
        var title = w["unit.title", ("tag", file.Unit.Tag)];
        if (judging.WhyNot(file) is { } why)
            return new Frame(w, title, "bench", $"<p class=\"note\">{Page.Safe(w["bench.rules", ("why", why)])}</p>");
        var judged = judging.Judge(file);
        return new Frame(w, title, "bench", $"""
            <p id="changed" class="note" hidden>{Page.Safe(w["unit.changed"])} <a href="/units/{file.Unit.Id}">{Page.Safe(w["unit.reload"])}</a></p>
            {Head(judged, w)}
            {Gate(await stages.Of(unit, cancellation), w)}
            <h2>{Page.Safe(w["unit.blocks"])}</h2>{Blocks(judged, w)}
            <section id="plans" hidden><h2>{Page.Safe(w["unit.plans"])}</h2></section>
            <h2>{Page.Safe(w["unit.clearances"])}</h2>{string.Concat(Worst(judged).Select((c, i) => Clearance(c, judged, i < MostDrawings, w)))}
            <h2>{Page.Safe(w["unit.parts"])}</h2>{string.Concat(judged.Answers.Parts.GroupBy(p => judged.Family.Positions[p.Position].Group).Select(g => Shaft(g, judged, w)))}
            """, "unit.js", new { words = w.Script, unit = file.Unit.Id });
    }

    private static string Head(Judged judged, PageWords w)
    {
        var unit = judged.File.Unit;
        var missing = judged.Answers.Missing.Length.ToString(CultureInfo.InvariantCulture);
        return $"""
            <p>{Page.Safe(string.Join(" · ", new[] { unit.Family.Id, w["stage." + unit.Stage], unit.Customer, unit.Words }.OfType<string>()))}</p>
            <p class="row noprint"><a class="button main" href="/bench/{unit.Id}">{Page.Safe(w["unit.bench"])}</a><a class="button" href="/units/{unit.Id}/record">{Page.Safe(w["unit.record"])}</a><a class="button" href="/units/{unit.Id}/assembly">{Page.Safe(w["unit.assembly"])}</a></p>
            <p>{string.Concat(judged.Answers.Parts.GroupBy(p => p.Outcome).OrderBy(g => g.Key).Select(g => $"{w.Outcome(g.Key)}: {g.Count().ToString(CultureInfo.InvariantCulture)} &nbsp; "))}</p>
            <p class="soft">{Page.Safe(w["unit.missing", ("n", missing)])}</p>
            """;
    }

    private static string Gate(StagesWire stages, PageWords w)
    {
        var left = stages.LeftOut.Select(l => $"<li>{Page.Safe(w["unit.left-out", ("what", Gates.All[l.Requirement].Name), ("reason", l.Reason ?? ""), ("person", l.Person ?? "")])}</li>");
        if (stages.Next is not { } next)
            return $"<ul>{string.Concat(left)}</ul>";
        return $"<h2>{Page.Safe(w["unit.gate", ("to", w["stage." + next.To])])}</h2><ul>{string.Concat(left)}{string.Concat(next.Requirements.Select(r => Asked(r, w)))}</ul>";
    }

    private static string Asked(RequirementWire asked, PageWords w)
    {
        if (asked.Met)
            return $"<li>{Page.Safe(w["unit.met", ("what", asked.Name)])}</li>";
        var more = asked.Unmet.Length > 1 ? " " + w["shop.more", ("n", (asked.Unmet.Length - 1).ToString(CultureInfo.InvariantCulture))] : "";
        return $"<li><strong>{Page.Safe(w["unit.unmet", ("what", asked.Name)])}</strong> {Page.Safe($"{asked.Unmet[0].Words} {asked.Unmet[0].Fix}{more}")}</li>";
    }

    private static string Blocks(Judged judged, PageWords w)
    {
        var all = judged.Answers.Blocks;
        if (all.IsEmpty)
            return $"<p>{Page.Safe(w["unit.no-blocks"])}</p>";
        var rest = all.Length - MostBlocks;
        return $"<ul>{string.Concat(all.Take(MostBlocks).Select(b => $"<li><strong>{Page.Safe(b.Subject)}</strong> {Page.Safe(ReasonText.Words(b.Reason))}</li>"))}{(rest > 0 ? $"<li>{Page.Safe(w["shop.more", ("n", rest.ToString(CultureInfo.InvariantCulture))])}</li>" : "")}</ul>";
    }

    // What is known comes before what is not: an empty drawing helps nobody.
    private static IEnumerable<ClearanceAnswer> Worst(Judged judged) => judged.Answers.Clearances
        .OrderByDescending(c => c.Verdict.Outcome == Outcome.Nonconforming).ThenByDescending(c => c.Combined.Value is not null);

    private static string Clearance(ClearanceAnswer answer, Judged judged, bool drawn, PageWords w)
    {
        var loop = judged.Family.Loops[answer.Verdict.Subject];
        var address = $"/v1/units/{judged.File.Unit.Id}/clearances/{loop.Id}.svg";
        return $"""
            <figure class="card"><figcaption><span class="big">{Page.Safe(loop.Name.In("en"))}</span> {w.Outcome(answer.Verdict.Outcome)} {Advice(answer.Ring, w)}</figcaption>
            {(drawn ? new StackDrawing(answer, judged.Family, w).Draw().Inside : $"<a href=\"{address}\">SVG</a>")}
            <p class="soft">{Page.Safe(answer.Verdict.Reasons.IsEmpty ? "" : ReasonText.Words(answer.Verdict.Reasons[0]))}</p></figure>
            """;
    }

    private static string Advice(RingAnswer? ring, PageWords w)
    {
        if (ring is null)
            return "";
        if (ring.Outcome == RingOutcome.Fits && ring.Ranked.FirstOrDefault() is { } best)
            return "<p>" + Page.Safe(w["unit.ring", ("members", string.Join(" + ", best.Members)), ("thickness", Shown.Of(new Exact(best.Thickness)))]) + "</p>";
        var cuts = ring.Cuts.Take(3).Select(c => Page.Safe(w["unit.cut",
            ("operation", c.Operation), ("at", c.At.ToString()), ("cut", Shown.Of(new Exact(c.ToEnter))), ("permission", Kebab.Of(c.Permission))]));
        return ring.Outcome == RingOutcome.NotAssessed ? "" : $"<p>{Page.Safe(w["unit.no-ring"])} {string.Join("<br>", cuts)}</p>";
    }

    private static string Shaft(IGrouping<string, PartAnswer> group, Judged judged, PageWords w) => $"""
        <h3>{Page.Safe(group.Key)}</h3><ol class="shaft">{string.Concat(group.Select(p => Part(p, judged, w)))}</ol>
        """;

    private static string Part(PartAnswer part, Judged judged, PageWords w)
    {
        var pairings = judged.Answers.Pairings.Where(p => Positions(p, judged.Family).Contains(part.Position) && p.Outcome != Compatibility.Compatible).Take(3);
        var name = judged.Family.Positions[part.Position].Name.In("en");
        var number = part.Index > 1 ? " " + part.Index.ToString(CultureInfo.InvariantCulture) : "";
        return $"<li>{Page.Safe(name + number)} {w.Outcome(part.Outcome)} <span class=\"soft\">{Page.Safe(w["d." + Kebab.Of(part.Disposition)])}</span>{string.Concat(pairings.Select(p => Pairing(p, part.Position, judged.Family, w)))}</li>\n";
    }

    private static string Pairing(PairingVerdict pairing, string here, FamilyIndex family, PageWords w)
    {
        var neighbours = Positions(pairing, family).Where(p => p != here).Select(p => family.Positions.GetValueOrDefault(p)?.Name.In("en") ?? p);
        var cure = pairing.Outcome == Compatibility.Incompatible && pairing.Cures.FirstOrDefault() is { } c ? " " + w["unit.cures", ("cure", c.Text.In("en"))] : "";
        return $"<br>{w.Outcome(pairing.Outcome)} {Page.Safe(string.Join(", ", neighbours))}{Page.Safe(cure)}";
    }

    private static ImmutableArray<string> Positions(PairingVerdict pairing, FamilyIndex family) =>
        family.Pairings.GetValueOrDefault(pairing.Rule) is { } rule ? [.. rule.Roles.Values.Distinct(StringComparer.Ordinal)] : [];
}
