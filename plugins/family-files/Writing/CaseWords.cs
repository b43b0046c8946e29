using FamilyFiles.Sections;
using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes worked cases.</summary>
internal static class CaseWords
{
    public static MapNode Case(GoldenCase g, Figures figures)
    {
        var places = g.Snapshot.Placements.ToDictionary(p => p.Component, p => Place(p.Position, p.Index), StringComparer.Ordinal);
        var seen = g.Snapshot.Findings;
        return Map(
            ("found", Names(Placed(g, PlacementRole.Found))),
            ("chosen", Names(Placed(g, PlacementRole.Chosen))),
            ("facing", MapIf(g.Snapshot.Placements.Where(p => p.Facing != Facing.Unspecified)
                .Select(p => (Place(p.Position, p.Index), (Node?)Say(p.Facing == Facing.Input ? "input" : "output"))))),
            ("marks", MapIf(g.Snapshot.Placements.Where(p => p.IndexMark is not null).Select(p => (Place(p.Position, p.Index), (Node?)Say(p.IndexMark!))))),
            ("read", MapIf(g.Snapshot.Measurements.Select(m => ($"{places[m.Component]}/{m.Characteristic}", (Node?)Say(Readings(m.Readings)))))),
            ("seen", MapIf(seen.Select(f => (f.Component, Seen: f.Observation as AttributeSeen)).Where(f => f.Seen is not null)
                .Select(f => ($"{places[f.Component]}/{f.Seen!.Attribute}", (Node?)Say(f.Seen.Value))))),
            ("damage", List(seen.Select(f => (f.Component, Damage: f.Observation as DamageSeen)).Where(f => f.Damage is not null).Select(f => Damage(places[f.Component], f.Damage!)))),
            ("sound", Names(seen.Where(f => f.Observation is Sound).Select(f => places[f.Component]))),
            ("tried", List(g.Snapshot.Trials.Select(t => Tried(t, places, figures)))),
            ("expect", Map(g.Expected.Select(e => (e.Subject, (Node?)Say(e.Outcome))))));
    }

    private static IEnumerable<string> Placed(GoldenCase g, PlacementRole role) => g.Snapshot.Placements.Where(p => p.Role == role).Select(p => Place(p.Position, p.Index));

    private static string Place(string position, int index) => index == 1 ? position : string.Create(CultureInfo.InvariantCulture, $"{position}#{index}");

    private static Node Damage(string at, DamageSeen d) => Map(("at", Say(at)), ("class", Say(d.Class)), ("extent", Say(d.Extent)), ("where", SayIf(d.Place)));

    private static MapNode Tried(TrialAssembly t, Dictionary<string, string> places, Figures figures) => Map(
        ("clearance", Say(t.Loop)),
        ("fitted", Names(t.Fitted.Select(f => places[f.Component]))),
        ("pieces", List(t.Pieces.Select(p => Map(
            ("series", Say(p.Series)), ("position", Unless(p.Position, p.Series)), ("member", Say(p.Member)), ("thickness", Say(figures.Length(p.Thickness))))))),
        ("gap", Say(Readings(t.Gap))));

    /// <summary>As they were sent; alike ones are counted.</summary>
    private static string Readings(ImmutableArray<Reading> readings)
    {
        var texts = readings.Select(r => r.AsSent).Distinct(StringComparer.Ordinal).ToList();
        var unit = readings[0].AsSent == "tight" || readings[0].Unit.Length == 0 ? "" : " " + readings[0].Unit;
        var times = texts.Count == 1 ? readings.Length : 1;
        var numbers = texts.Count == 1 ? texts[0] : string.Join(" / ", readings.Select(r => r.AsSent));
        return times == 1 ? numbers + unit : string.Create(CultureInfo.InvariantCulture, $"{times} x {numbers}{unit}");
    }
}
