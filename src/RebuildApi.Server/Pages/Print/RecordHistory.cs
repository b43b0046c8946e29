using System.Collections.Immutable;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Composition.Stages;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>The part of a record that tells who signed for what, what was left out and on whose word, and which judgement was relied on.</summary>
public sealed class RecordHistory(Judged judged, RecordFacts facts, Spoken named, PageWords w)
{
    private readonly GateWords _gates = new(judged.Family, w);
    private readonly string _build = Build.Sha256(judged.File);

    /// <summary>Its blocks.</summary>
    public IEnumerable<Block> Write() =>
    [
        new Heading(w["unit.signed"]),
        new Grid(
            PaperHead.Columns(w, ("sign.check", 2), ("sign.result", 2), ("sign.by", 2), ("sign.when", 1.6), ("sign.note", 2.6)),
            [.. facts.SignOffs.Select(Signed)], w["record.nobody-signed"]),
        new Heading(w["record.left-out"]),
        new Grid(
            PaperHead.Columns(w, ("record.left", 2.4), ("record.reason", 2.8), ("sign.by", 1.6), ("sign.when", 1.5), ("record.open", 3)),
            [.. facts.Passings.SelectMany(p => p.Gate.Where(g => g.State != "met").Select(g => Left(g, p)))], w["record.nothing-left-out"]),
        new Heading(w["record.way"]),
        new Grid(
            PaperHead.Columns(w, ("record.to", 2), ("sign.by", 2), ("sign.when", 1.6), ("sign.note", 4)),
            [.. facts.Passings.Select(p => Row.Of(w["stage." + p.To], p.Person, PaperHead.Minute(p.Time), p.Note ?? ""))], w["record.none"]),
        new Heading(w["record.kept"]),
        .. Kept(),
    ];

    private Row Signed(SignOff s) => new(
    [
        new Cell(_gates.Check(s.Check)),
        !s.Passed ? new Cell(w["sign.failed"], "nonconforming") : s.BuildSha256 == _build ? new Cell(w["sign.passed"], "conforming") : new Cell(w["sign.stale"], "inconclusive"),
        new Cell($"{s.Person}, {s.Bench}"), new Cell(PaperHead.Minute(s.Time)), new Cell(s.Note ?? ""),
    ]);

    private Row Left(GateAnswer g, StagePassing p) => Row.Of(
        _gates.Requirement(g.Requirement), (g.State == "excepted" ? w["record.excepted"] : w["record.not-available"]) + " " + g.Reason, g.Person ?? p.Person, PaperHead.Minute(p.Time),
        string.Join(", ", g.Left.Select(named.Subject)));

    // The papers are made from what stands now; whether that is what was relied on is told by the hashes.
    private IEnumerable<Block> Kept()
    {
        if (facts.Kept is not { } kept)
            return [new Prose(w["record.not-kept"])];
        var isSame = kept.InputsSha256 == judged.View.InputsSha256 && kept.DeclarationSha256 == judged.Answers.Rules.DeclarationSha256;
        return
        [
            new Prose(w["record.kept-of", ("purpose", w["kept." + kept.Purpose]), ("when", PaperHead.Minute(kept.At)), ("id", kept.Id), ("rules", kept.DeclarationSha256), ("inputs", kept.InputsSha256)]),
            new Prose(w[isSame ? "record.kept-same" : "record.kept-other"]),
        ];
    }
}
