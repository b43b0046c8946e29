using System.Collections.Immutable;
using RebuildApi.Contracts;
using RebuildApi.Engine.Snapshots;
using RebuildApi.Server.Composition;
using RebuildApi.Server.Wire;
using RebuildApi.Storage;

namespace RebuildApi.Server.Pages;

/// <summary>What a bench has entered so far and what came of it, as the bench page's script takes it.</summary>
public sealed class BenchState(Judged judged, ImmutableArray<TestDone> tests, ImmutableArray<Attachment> attachments, PageWords words)
{
    private readonly Spoken _named = new(judged.Family, words.Language);
    private readonly ILookup<string, string> _places = judged.Answers.Parts
        .Where(p => p.Component is not null)
        .ToLookup(p => p.Component!.Id, p => Subjects.Of(p.Position, p.Index), StringComparer.Ordinal);

    /// <summary>Place, sort and id of everything that is still open, in stripping order.</summary>
    public IEnumerable<string[]> Missing => judged.Answers.Missing.Select(m => new[] { Subjects.Of(m.Position, m.Index), Kebab.Of(m.What), m.Id });

    /// <summary>Outcome, disposition and first reason by place, and by clearance.</summary>
    public IReadOnlyDictionary<string, object> Outcomes
    {
        get
        {
            var parts = judged.Answers.Parts.Select(p => (Key: Subjects.Of(p.Position, p.Index), Value: Told(p.Outcome, Kebab.Of(p.Disposition), FirstReason(p))));
            var clearances = judged.Answers.Clearances.Select(c => (Key: c.Verdict.Subject, Value: Told(c.Verdict.Outcome, null, c.Verdict.Reasons.FirstOrDefault())));
            return parts.Concat(clearances).DistinctBy(x => x.Key).ToDictionary(x => x.Key, x => x.Value, StringComparer.Ordinal);
        }
    }

    /// <summary>Id and words of what was seen, by place.</summary>
    public IReadOnlyDictionary<string, string[][]> Seen => judged.File.Findings
        .SelectMany(f => _places[f.Component].Select(at => (at, Words: Told(at, f))))
        .GroupBy(x => x.at, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Select(x => x.Words).ToArray(), StringComparer.Ordinal);

    /// <summary>What was read, as it was sent, by address or clearance.</summary>
    public IReadOnlyDictionary<string, string> Read => judged.File.Measurements
        .SelectMany(m => _places[m.Component].Select(at => (Key: $"{at}/{m.Characteristic}", Value: Words(m.Readings))))
        .Concat(judged.File.Trials.Select(t => (Key: t.Loop, Value: Words(t.Gap))))
        .GroupBy(x => x.Key, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Last().Value, StringComparer.Ordinal);

    /// <summary>The clearances that were tried.</summary>
    public IEnumerable<string> Tried => judged.File.Trials.Select(t => t.Loop).Distinct(StringComparer.Ordinal);

    /// <summary>Whether each test that was tried showed; of several results the newest.</summary>
    public IReadOnlyDictionary<string, bool> Tests => tests.GroupBy(t => t.Seen.Test, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Seen.Shown, StringComparer.Ordinal);

    /// <summary>The photos of each finding.</summary>
    public IReadOnlyDictionary<string, string[]> Photos => attachments.Where(a => a.Finding is not null).GroupBy(a => a.Finding!, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Select(a => a.Id).ToArray(), StringComparer.Ordinal);

    private object Told(Outcome outcome, string? disposition, Reason? reason) => new
    {
        o = Kebab.Of(outcome),
        d = outcome == Outcome.NotAssessed ? null : disposition,
        // What is not assessed yet says so by what is missing; words for each of a hundred parts would only make the page heavy.
        t = reason is null || outcome == Outcome.NotAssessed ? null : judged.Family.Say(reason),
    };

    private static Reason? FirstReason(Engine.Judging.PartAnswer part) =>
        part.Verdicts.Append(part.Condition).Where(v => v.Outcome == part.Outcome).SelectMany(v => v.Reasons).FirstOrDefault();

    private string[] Told(string at, Finding found) => found.Observation switch
    {
        DamageSeen d => [found.Id, string.Join(", ", new[] { words.Damaged(d.Class), d.Extent is { } far ? words["js.x-" + far] : null, d.Place }.OfType<string>())],
        AttributeSeen a => [found.Id, $"{_named.Feature(at, a.Attribute)}: {_named.Value(at, a.Attribute, a.Value)}", "a", a.Attribute],
        _ => [found.Id, words["js.sound"]],
    };

    private static string Words(IEnumerable<Reading> readings) => string.Join(", ", readings.Select(r => r.AsSent == "tight" ? r.AsSent : $"{r.AsSent} {r.Unit}"));
}
