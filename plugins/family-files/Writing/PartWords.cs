using FamilyFiles.Yaml;
using static FamilyFiles.Writing.Build;

namespace FamilyFiles.Writing;

/// <summary>Writes materials, kinds, positions and series.</summary>
internal sealed class PartWords(Figures figures, SourceNames sources, SharedAttributes shared)
{
    public MapNode Material(Material m) => Map(
        ("name", Words(m.Name, "material." + m.Id)),
        ("expansion", Say(PerKelvin(m.ExpansionPerKelvin))),
        ("within", Say(PerKelvin(m.ExpansionHalfWidth))),
        ("source", sources.Unless("materials", m.Source)));

    public MapNode Kind(PartKind k) => Map(
        ("name", Words(k.Name, "kind." + k.Id)),
        ("material", SayIf(k.Material)),
        ("single-use", k.SingleUse ? Say("true") : null),
        ("teeth", List(k.ToothSets.Select(Teeth))),
        ("measures", Alike.Shortened(MapIf(k.Characteristics.Select(c => (c.Id, (Node?)Characteristic(k, c)))))),
        ("shows", Shows(k)),
        ("damage", Names(k.DamageClasses)));

    public MapNode Position(Position p, int line) => Map(
        ("name", Words(p.Name, "position." + p.Id)),
        ("kind", Unless(p.Kind, p.Id)),
        ("group", Say(p.Group)),
        ("quantity", p.Quantity == 1 ? null : Whole(p.Quantity)),
        ("fewest", p.Fewest is { } few ? Whole(few) : null),
        ("order", p.StripOrder == line ? null : Whole(p.StripOrder)),
        ("limits", MapIf(p.Overrides.Select(o => (o.Characteristic, (Node?)Map(("new", Limits(o.New)), ("service", Limits(o.Service))))))));

    public MapNode Series(Series s) => Map(
        ("kind", Unless(s.Kind, s.Id)),
        ("tolerance", Say(figures.Length(s.Tolerance))),
        ("members", Map(s.Members.Select(m => (m.Id, (Node?)Say(figures.Length(m.Thickness)))))),
        ("source", sources.Unless("numbers", s.Source)));

    public Node? Limits(Limits? limits)
    {
        if (limits is null)
            return null;
        var text = Say(figures.Window(limits.Low, limits.High, limits.Target));
        return sources.Unless("numbers", limits.Source) is { } source ? Map(("is", text), ("source", source)) : text;
    }

    public static MapNode Attribute(AttributeDefinition a) => Map(
        ("ask", Words(a.Name, "attribute." + a.Id)),
        ("values", Map(a.Values.Select(v => (v.Id, (Node?)Words(v.Name, $"attribute.{a.Id}.{v.Id}"))))));

    private Node? Shows(PartKind k) => k.Attributes.All(shared.Has)
        ? Names(k.Attributes.Select(a => a.Id))
        : Map(k.Attributes.Select(a => (a.Id, (Node?)(shared.Has(a) ? Say("shared") : Attribute(a)))));

    private MapNode Teeth(ToothSet t) => Map(
        ("row", Unless(t.Id, "")),
        ("count", Whole(t.Teeth)),
        ("module", Say(figures.Length(t.NormalModule))),
        ("hand", Word(t.Hand)),
        ("helix", t.HelixAngle == 0 ? null : Say(figures.Angle(t.HelixAngle))),
        ("pressure", Say(figures.Angle(t.NormalPressureAngle))),
        ("shift", t.ProfileShift == 0 ? null : Number(t.ProfileShift)),
        ("source", sources.Unless("numbers", t.Source)));

    private MapNode Characteristic(PartKind kind, Characteristic c) => Map(
        ("name", Words(c.Name, $"{kind.Id}.{c.Id}")),
        ("is", Word(c.Dimension, Dimension.Length)),
        ("new", Limits(c.New)),
        ("service", Limits(c.Service)),
        ("counts", Word(c.Report, Statistic.Mean)),
        ("readings", c.MinimumReadings == 1 ? null : Whole(c.MinimumReadings)),
        ("by", Names(c.Methods)),
        ("unmeasured", Word(c.Unmeasured, Distribution.None)),
        ("matters", Word(c.Criticality, Criticality.Ordinary)),
        ("follows", Follows(c.DerivedFrom)));

    private Node? Follows(Derivation? from) => from switch
    {
        Linear linear => Say(GapWords.Of(linear.Terms, figures)),
        Named named => Map(("function", Say(named.Function)), ("of", Map(named.Arguments.OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => (a.Key, (Node?)Say(a.Value.ToString())))))),
        _ => null,
    };

    private static string PerKelvin(double value) => ((decimal)value * 1_000_000).ToString("0.0###", CultureInfo.InvariantCulture) + " ppm/K";
}
