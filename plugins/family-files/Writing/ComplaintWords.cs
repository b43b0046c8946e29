using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes symptoms and causes.</summary>
internal static class ComplaintWords
{
    public static MapNode Symptom(Symptom s) => Map(("name", Words(s.Name, "symptom." + s.Id)), ("gears", Names(s.Gears)));

    public static MapNode Cause(Cause c, SourceNames sources) => Map(
        ("name", Words(c.Name, "cause." + c.Id)),
        ("prior", Number(c.Prior)),
        ("brings", List(c.Explains.Select(Link))),
        ("signs", List(c.Signs.Select(Sign))),
        ("source", sources.Unless("likelihoods", c.Source)));

    private static MapNode Link(SymptomLink l) => Map(
        ("symptom", Say(l.Symptom)), ("gear", SayIf(l.Gear)), ("chance", List([Number(l.Low), Number(l.Best), Number(l.High)])));

    private static MapNode Sign(Sign sign) => sign switch
    {
        AttributeSign a => Map(("position", Say(a.Position)), ("shows", Say(a.Attribute)), ("values", Names(a.Values))),
        DamageSign d => Map(("position", Say(d.Position)), ("damage", Names(d.Classes)), ("place", Unless(d.Place, "*"))),
        VerdictSign v => Map(("out-of-limits", Say(v.Subject))),
        _ => throw new NotSupportedException($"A sign of the kind {sign.GetType().Name} can't be written."),
    };
}
