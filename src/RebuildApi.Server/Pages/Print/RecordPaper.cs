using System.Collections.Immutable;
using System.Globalization;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>What goes out with a gearbox: what was seen and read on each part, by whom, with what, between which limits, and what came of it.</summary>
public sealed class RecordPaper(Judged judged, RecordFacts facts, DateTimeOffset now, PageWords w)
{
    private static readonly Display Metric = new(Inches: false, AsSent: false);
    private readonly PaperHead _head = new(judged, now, w);
    private readonly Spoken _named = new(judged.Family, w.Language);
    private readonly AnswerSheet _sheet = new(judged, Metric);
    private readonly ILookup<string, Measurement> _read = judged.File.Measurements.ToLookup(m => m.Component, StringComparer.Ordinal);
    private readonly ILookup<string, Finding> _seen = judged.File.Findings.ToLookup(f => f.Component, StringComparer.Ordinal);

    /// <summary>The paper.</summary>
    public Paper Write() => new(w["record.title", ("tag", judged.File.Unit.Tag)],
    [
        _head.Gearbox,
        _head.Rules,
        .. judged.File.Unit.Words is { Length: > 0 } words ? [new Prose(w["record.complaint", ("words", words)])] : ImmutableArray<Block>.Empty,
        new Heading(w["record.parts"]),
        new Grid(
            PaperHead.Columns(w, ("record.part", 2.2), ("record.read", 2.6), ("record.value", 1.9), ("record.limits", 1.9), ("record.outcome", 2.1), ("record.by", 2.2)),
            [.. _sheet.Parts.Where(p => p.Component is not null).SelectMany(Part)], w["record.none"]),
        new Prose(w["record.uncertainty"], IsSoft: true),
        new Heading(w["record.clearances"]),
        new Grid(
            PaperHead.Columns(w, ("assembly.clearance", 3), ("record.value", 1.8), ("assembly.window", 2), ("record.outcome", 1.6)),
            [.. _sheet.Clearances.Select(c => new Row([new Cell(c.Name), new Cell(Shown.Of(c.Gap)), new Cell(Shown.Of(c.Verdict.Against)), Told(Kebab.Of(c.Outcome))]))], w["record.none"]),
        new Heading(w["record.as-built"]),
        new AsBuilt(judged, facts, _sheet.Clearances, w).Write(By),
        new Heading(w["record.pairings"]),
        new Grid(
            PaperHead.Columns(w, ("record.pairing", 5), ("record.outcome", 2)),
            [.. _sheet.Pairings.Select(p => new Row([new Cell(p.Name), Told(Kebab.Of(p.Outcome))]))], w["record.none"]),
        new Heading(w["record.decisions"]),
        new Grid(
            PaperHead.Columns(w, ("record.about", 2.2), ("record.choice", 1.2), ("record.reason", 3.4), ("record.by", 2.2)),
            [.. judged.File.Decisions.Select(d => Row.Of(_named.Subject(d.Subject), d.Choice, d.Reason, $"{d.Person}, {PaperHead.Minute(d.At)}"))], w["record.none"]),
        .. new RecordHistory(judged, facts, _named, w).Write(),
        new Heading(w["record.instruments"]),
        Instruments(),
        .. facts.Attachments.IsEmpty ? ImmutableArray<Block>.Empty : [new Heading(w["unit.photos"]), Photos()],
        new Heading(w["record.cautions"]),
        _head.Cautions,
        _head.Sign("record.builder", "record.checker", "record.tester", "record.receiver"),
    ]);

    private IEnumerable<Row> Part(PartVerdictWire part)
    {
        var place = part.Subject.Split('#') is [_, var number] ? $"{part.Name} {number}" : part.Name;
        var seen = _seen[part.Component!].Where(f => f.Revision == part.Revision).ToArray();
        yield return new Row(
        [
            new Cell(part.Revision > 1 ? w["record.revision", ("part", place), ("n", part.Revision.Value.ToString(CultureInfo.InvariantCulture))] : place),
            new Cell(string.Join("\n", seen.Select(f => Saw(part.Subject, f.Observation)))), new Cell(""), new Cell(""),
            Told(Kebab.Of(part.Outcome), w["d." + Kebab.Of(part.Disposition)]), new Cell(seen.Length > 0 ? By(seen[^1].Taken) : ""),
        ], IsHead: true);
        foreach (var v in part.Verdicts)
        {
            var id = v.Subject.Split('/')[^1].Split('#')[0];
            var read = _read[part.Component!].Where(m => m.Characteristic == id && m.Revision == part.Revision).ToArray();
            if (read.Length > 0 || v.Value is not null)
                yield return Reading(part.Subject, id, v, read);
        }
    }

    private Row Reading(string place, string id, VerdictWire v, Measurement[] read) => new(
    [
        new Cell(_named.Feature(place, id)), new Cell(string.Join(", ", read.SelectMany(m => m.Readings).Select(AsSent))), new Cell(Shown.Of(v.Value)),
        new Cell(Shown.Of(v.Against)), Told(Kebab.Of(v.Outcome)), new Cell(read.Length > 0 ? By(read[^1].Taken) : ""),
    ]);

    /// <summary>A reading as it was sent.</summary>
    internal static string AsSent(Reading r) => r.AsSent == "tight" ? r.AsSent : $"{r.AsSent} {r.Unit}";

    private string Saw(string place, Observation seen) => seen switch
    {
        DamageSeen d => string.Join(", ", new[] { w.Damaged(d.Class), d.Extent is { } far ? w["js.x-" + far] : null, d.Place }.OfType<string>()),
        AttributeSeen a => $"{_named.Feature(place, a.Attribute)}: {_named.Value(place, a.Attribute, a.Value)}",
        _ => w["js.sound"],
    };

    private string By(Taken taken)
    {
        var with = judged.File.Instruments.FirstOrDefault(i => i.State.Id == taken.Instrument)?.Name ?? taken.Instrument;
        return string.Join(", ", new[] { with, taken.Person, PaperHead.Minute(taken.At) }.OfType<string>());
    }

    private Cell Told(string outcome, string? more = null) => new(w["o." + outcome] + (more is null ? "" : ": " + more), outcome);

    private Grid Instruments() => new(
        PaperHead.Columns(w, ("record.instrument", 3), ("record.step", 1.4), ("record.error", 1.6), ("record.due", 1.6)),
        [.. judged.File.Instruments.Select(i => Row.Of(
            $"{i.Name} ({i.State.Id})", Shown.Of(i.State.Resolution), i.State.LimitOfError is { } error ? Shown.Of(error) : w["record.unknown"],
            i.State.CalibrationDue is { } day ? PaperHead.Day(day) : w["record.unknown"]))],
        w["record.none"]);

    private Grid Photos() => new(
        PaperHead.Columns(w, ("record.photo", 3.4), ("sign.by", 1.6), ("sign.when", 1.6), ("record.hash", 3)),
        [.. facts.Attachments.Select(a => Row.Of($"{a.Note ?? w["unit.photo-whole"]} ({a.MediaType})", a.Person, PaperHead.Minute(a.Time), a.Sha256))], w["record.none"]);
}
