using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Clearances;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;
using RebuildApi.Server.Wire.Shop;

namespace RebuildApi.Server.Pages;

/// <summary>The sheet to build a gearbox by: by its plan where it has one, with the ring, shim or cut of each clearance, and room for what is read when it is built.</summary>
public sealed class AssemblyPaper(Judged judged, PlanWire? plan, DateTimeOffset now, PageWords w)
{
    private const string ToFill = "☐ __________";
    private readonly PaperHead _head = new(judged, now, w);
    private readonly Spoken _named = new(judged.Family, w.Language);

    /// <summary>The paper.</summary>
    public Paper Write() => new(w["assembly.title", ("tag", judged.File.Unit.Tag)],
    [
        _head.Gearbox,
        _head.Rules,
        _head.Cautions,
        .. plan is null ? [new Prose(w["assembly.no-plan"])] : OfPlan(plan),
        new Heading(w["unit.clearances"]),
        new Grid(
            PaperHead.Columns(w, ("assembly.clearance", 2.4), ("assembly.window", 1.8), ("assembly.piece", 3.4), ("assembly.found", 1.6)),
            [.. judged.Answers.Clearances.Select(ToBuild)], w["record.none"]),
        .. new BuildingLists(judged.Family, w).Write(),
        new Heading(w["assembly.pairings"]),
        Pairings(),
        _head.Sign("record.builder", "record.checker"),
    ]);

    private IEnumerable<Block> OfPlan(PlanWire plan)
    {
        yield return new Heading(w["assembly.work"]);
        yield return new Grid(
            PaperHead.Columns(w, ("assembly.operation", 2.2), ("record.part", 2), ("assembly.minutes", 0.9), ("assembly.again", 3), ("assembly.done", 1.2)),
            [.. plan.Work.Select(Work)], w["record.none"]);
        yield return new Bullets([.. plan.Work.SelectMany(o => o.Cautions).Distinct(StringComparer.Ordinal)]);
        yield return new Heading(w["assembly.places"]);
        yield return new Grid(
            PaperHead.Columns(w, ("record.part", 2.4), ("assembly.what", 1.2), ("assembly.fit", 3), ("assembly.done", 1)),
            [.. plan.Lines.Reverse().Select(l => Row.Of(l.Name, w["d." + l.Disposition], new Fitted(_named, w).Of(l), "☐"))], w["record.none"]);
        yield return new Heading(w["unit.conditions"]);
        yield return new Grid(
            PaperHead.Columns(w, ("record.about", 2.4), ("shop.why", 5), ("assembly.done", 1)),
            [.. plan.Conditions.Select(c => Row.Of(_named.Subject(c.Subject), c.Text, "☐"))], w["record.none"]);
    }

    private Row Work(PlanWorkWire o) => Row.Of(
        o.Name + (o.Change is { } change ? $" ({Shown.Of(change)})" : ""), o.Position is { } at ? _named.Subject(at) : "",
        o.Minutes.ToString("0.#", CultureInfo.InvariantCulture), string.Join(", ", o.Remeasure.Select(r => o.Position is { } p && !r.Contains('/', StringComparison.Ordinal) ? _named.Feature(p, r) : _named.Subject(r))), "☐");

    private Row ToBuild(ClearanceAnswer c) => Row.Of(
        judged.Family.Loops[c.Verdict.Subject].Name.In(w.Language), Shown.Of(LimitsWire.From(judged.Family.Loops[c.Verdict.Subject].Window, new Display(false, false))),
        string.Join("\n", new Advice(_named, w).Of(c.Ring)), ToFill);

    private Block Pairings()
    {
        var open = judged.Answers.Pairings.Where(p => p.Outcome != Compatibility.Compatible).ToImmutableArray();
        return new Grid(
            PaperHead.Columns(w, ("record.pairing", 4.5), ("record.outcome", 2), ("assembly.done", 1)),
            [.. open.Select(p => new Row([new Cell(_named.Subject(p.Rule)), new Cell(w["o." + Kebab.Of(p.Outcome)], Kebab.Of(p.Outcome)), new Cell("☐")]))], w["assembly.holds"]);
    }
}
