using FamilyFiles.Sections;
using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes clearances, operations, pairings, sets, meshes and damage.</summary>
internal sealed class RuleWords(Figures figures, SourceNames sources)
{
    public MapNode Clearance(ClearanceLoop l) => Map(
        ("name", Words(l.Name, "clearance." + l.Id)),
        ("group", Say(l.Group)),
        ("gap", Say(GapWords.Of(l.Terms, figures))),
        ("window", Limits(l.Window)),
        ("trial", Word(l.Trial, TrialMethod.None)),
        ("matters", Word(l.Criticality, Criticality.Ordinary)),
        ("between", l.Thermal is { } t ? Map(
            ("cold", Say(figures.Temperature(t.Cold))), ("hot", Say(figures.Temperature(t.Hot))),
            ("cold-window", Limits(t.ColdWindow)), ("hot-window", Limits(t.HotWindow))) : null),
        ("below", WordsIf(l.WhenBelow, $"clearance.{l.Id}.below")),
        ("above", WordsIf(l.WhenAbove, $"clearance.{l.Id}.above")));

    public MapNode Operation(Operation o) => Map(
        ("name", Words(o.Name, "operation." + o.Id)),
        ("kind", Say(o.Kind)),
        ("minutes", Say(o.Minutes.ToString(CultureInfo.InvariantCulture))),
        ("changes", MapIf(o.Effects.Select(e => (e.At.ToString(), (Node?)Change(e))))),
        ("mends", Names(o.Mends)),
        ("cautions", List(o.Cautions.Select((c, i) => Words(c, string.Create(CultureInfo.InvariantCulture, $"operation.{o.Id}.caution-{i + 1}"))))),
        ("then-measure", Names(o.RemeasureGate)));

    public MapNode Pairing(PairingRule p) => Map(
        ("name", Words(p.Name, "pairing." + p.Id)),
        ("template", Say(p.Template)),
        ("roles", Map(p.Roles.OrderBy(r => r.Key, StringComparer.Ordinal).Select(r => (r.Key, (Node?)Say(r.Value))))),
        ("numbers", MapIf(p.Parameters.OrderBy(n => n.Key, StringComparer.Ordinal).Select(n => (n.Key, (Node?)Say(figures.Quantity(n.Value)))))),
        ("options", MapIf(p.Options.OrderBy(o => o.Key, StringComparer.Ordinal).Select(o => (o.Key, (Node?)Say(o.Value))))),
        ("broken", Word(p.WhenBroken, Compatibility.Incompatible)),
        ("severity", Word(p.Severity)),
        ("consequence", Words(p.Consequence, $"pairing.{p.Id}.consequence")),
        ("cures", MapIf(p.Cures.Select(c => (c.Id, (Node?)Cure(p, c))))),
        ("source", sources.Unless("rules", p.Source)));

    public Node Damage(DamagePolicy d) => Map(
        ("kind", Unless(d.Kind, "*")),
        ("class", Say(d.DamageClass)),
        ("extent", Unless(d.Extent, "*")),
        ("where", Unless(d.Where, "*")),
        ("duty", Unless(d.Duty, "*")),
        ("then", Word(d.Disposition)),
        ("outcome", Word(d.Outcome, DamageForm.Implied(d.Disposition))),
        ("advice", WordsIf(d.Advice, DamageForm.KeyOf(d.Kind, d.DamageClass, d.Extent, d.Where, d.Duty))),
        ("source", sources.Unless("rules", d.Source)));

    public static MapNode Set(MatchedSet s) => Map(("positions", Names(s.Positions)), ("bond", Word(s.Bond)));

    public static MapNode Mesh(GearMesh m) => Map(
        ("driver", Say(m.Driver)), ("driven", Say(m.Driven)), ("centres", Say(m.CentreDistance.ToString())), ("gears", Names(m.Gears)));

    private Node? Limits(Limits? limits)
    {
        if (limits is null)
            return null;
        var text = Say(figures.Window(limits.Low, limits.High, limits.Target));
        return sources.Unless("numbers", limits.Source) is { } source ? Map(("is", text), ("source", source)) : text;
    }

    private MapNode Change(Effect e) => Map(
        ("by", Say(figures.Window(new Exact(e.MinChange), new Exact(e.MaxChange), null))),
        ("step", Say(figures.Length(e.Step))),
        ("datum", Say(e.Datum)),
        ("remaining", Limits(e.Remaining)),
        ("case-share", e.ShareOfCaseDepth is { } share ? Number(share) : null));

    private MapNode Cure(PairingRule rule, Cure c) => Map(
        ("do", Words(c.Text, $"pairing.{rule.Id}.{c.Id}")),
        ("sufficient", c.Sufficient ? Say("true") : null),
        ("fit", List(c.Steps.Select(Step))));

    private MapNode Step(CureStep s) => Map(
        ("position", Say(s.Position)), ("attribute", SayIf(s.Attribute)), ("value", SayIf(s.Value)),
        ("characteristic", SayIf(s.Characteristic)), ("within", Limits(s.Within)));
}
