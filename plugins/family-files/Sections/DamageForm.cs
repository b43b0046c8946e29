using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>What a class of damage means.</summary>
internal sealed class DamageForm : ObjectForm<DamagePolicy>
{
    private const string Any = "*";
    private readonly Field<string> _kind;
    private readonly Field<string> _class;
    private readonly Field<string> _extent;
    private readonly Field<string> _where;
    private readonly Field<string> _duty;
    private readonly Field<Outcome> _outcome;
    private readonly Field<Disposition> _then;
    private readonly Field<Wording?> _advice;
    private readonly Field<Source?> _source;

    public DamageForm()
        : base("damage", "What a class of damage means for a kind. The most particular line that fits decides; * fits anything.")
    {
        _class = Need("class", Plain.Name, "The standard's class, such as macropitting.", "damageClass");
        _then = Need("then", new ChoiceForm<Disposition>(), "What is done with the part: reuse, rework, replace, or undecided.", "disposition");
        _outcome = May("outcome", new ChoiceForm<Outcome>(), Outcome.NotAssessed, "Whether the part conforms; when not said, it does if it is reused, and does not if it is reworked or replaced.");
        _kind = May("kind", Plain.Name, Any, "The kind of part.");
        _extent = May("extent", Plain.Name, Any, "How far it has gone: slight, moderate or severe.");
        _where = May("where", Plain.Name, Any, "The feature or side.");
        _duty = May("duty", Plain.Name, Any, "The duty the gearbox goes back to.");
        _advice = MayBe("advice", WordsForm.All, "What else to look for.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for rules.");
    }

    /// <summary>What is meant when only the disposition is said.</summary>
    public static Outcome Implied(Disposition then) => then switch
    {
        Disposition.Reuse => Outcome.Conforming,
        Disposition.Undecided => Outcome.NotAssessed,
        _ => Outcome.Nonconforming,
    };

    protected override DamagePolicy? Make(Got got, Node node, Place place, FileReading reading)
    {
        if ((got.Of(_source) ?? reading.Usual("rules", node, place)) is not { } source)
            return null;
        var (kind, damage, extent, where, duty) = (got.Of(_kind), got.Of(_class), got.Of(_extent), got.Of(_where), got.Of(_duty));
        var outcome = got.Has(_outcome) ? got.Of(_outcome) : Implied(got.Of(_then));
        return new DamagePolicy(kind, damage, extent, where, duty, outcome, got.Of(_then), got.Of(_advice)?.Keyed(KeyOf(kind, damage, extent, where, duty)), source);
    }

    public static string KeyOf(string kind, string damage, string extent, string where, string duty) => $"damage.{kind}.{damage}.{extent}.{where}.{duty}";
}
