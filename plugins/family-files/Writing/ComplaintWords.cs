using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes symptoms and causes.</summary>
internal static class ComplaintWords
{
    public static MapNode Symptom(Symptom s) => Map(
        ("name", Words(s.Name, "symptom." + s.Id)), ("gears", Names(s.Gears)), ("by-itself", Chance(s.Leak)), ("loosely", Chance(s.Loosely)));

    public static MapNode Test(DiagnosticTest t, SourceNames sources) => Map(
        ("name", Words(t.Name, "test." + t.Id)),
        ("stage", Word(t.Stage)),
        ("minutes", Say(t.Minutes.ToString(CultureInfo.InvariantCulture))),
        ("shows", Map(t.Shows.Select(l => (l.Cause, (Node?)Chance(l.Shown))))),
        ("otherwise", Chance(t.Otherwise)),
        ("source", sources.Unless("likelihoods", t.Source)));

    public static MapNode Cause(Cause c, SourceNames sources) => Map(
        ("name", Words(c.Name, "cause." + c.Id)),
        ("prior", Number(c.Prior)),
        ("prior-strength", c.PriorStrength is { } strength ? Number(strength) : null),
        ("outside", c.Outside ? Say("true") : null),
        ("brings", List(c.Explains.Select(Link))),
        ("signs", List(c.Signs.Select(Sign))),
        ("source", sources.Unless("likelihoods", c.Source)));

    private static MapNode Link(SymptomLink l) => Map(
        ("symptom", Say(l.Symptom)), ("gear", SayIf(l.Gear)), ("chance", Chance(new Likelihood(l.Low, l.Best, l.High))), ("when", When(l.When)));

    private static ListNode? Chance(Likelihood? chance) => chance is null ? null : List([Number(chance.Low), Number(chance.Best), Number(chance.High)]);

    private static MapNode? When(SymptomContext? when) => when is null ? null : Map(
        ("load", WordIf(when.Load)), ("clutch", WordIf(when.Clutch)), ("temperature", WordIf(when.Temperature)), ("road", WordIf(when.Road)));

    private static MapNode Sign(Sign sign) => Map(
    [
        .. Seen(sign).Entries.Select(e => (e.Key.Text, (Node?)e.Value)),
        ("found", Chance(sign.Found)),
        ("otherwise", Chance(sign.Otherwise)),
        ("minutes", sign.Minutes is { } minutes ? Say(minutes.ToString(CultureInfo.InvariantCulture)) : null),
    ]);

    private static MapNode Seen(Sign sign) => sign switch
    {
        AttributeSign a => Map(("position", Say(a.Position)), ("shows", Say(a.Attribute)), ("values", Names(a.Values))),
        DamageSign d => Map(("position", Say(d.Position)), ("damage", Names(d.Classes)), ("place", Unless(d.Place, "*"))),
        VerdictSign v => Map(("out-of-limits", Say(v.Subject)), ("side", WordIf(v.Side))),
        _ => throw new NotSupportedException($"A sign of the kind {sign.GetType().Name} can't be written."),
    };
}
