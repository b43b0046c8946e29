using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>One line of the tightening list.</summary>
internal sealed class FastenerForm : ObjectForm<Fastener>
{
    private readonly Field<Wording> _name;
    private readonly Field<ImmutableArray<string>> _holds;
    private readonly Field<int> _quantity;
    private readonly Field<Limits> _torque;
    private readonly Field<Limits?> _angle;
    private readonly Field<Criticality> _matters;
    private readonly Field<Wording?> _thread;
    private readonly Field<Wording?> _renewal;
    private readonly Field<Wording?> _sequence;

    public FastenerForm()
        : base("fastener", "Bolts, nuts, screws or plugs that are all tightened alike.")
    {
        _name = Need("name", WordsForm.All, "What a person calls them.");
        _holds = Need("holds", Plain.Names, "The positions that they hold.", "positions");
        _quantity = May("quantity", Plain.Whole, 1, "How many there are; 1 when not said.");
        _torque = Need("torque", LimitsForm.All, "What each is tightened to, such as 20 to 25 N.m.");
        _angle = MayBe("then-turn", LimitsForm.All, "How far each is turned on after that, such as 40 to 50 deg.", "angle");
        _matters = May("matters", new ChoiceForm<Criticality>(), Criticality.Ordinary, "What hangs on them.", "criticality");
        _thread = MayBe("thread", WordsForm.All, "What goes on the thread: oil, sealer, thread locker.");
        _renewal = MayBe("renewal", WordsForm.All, "When new ones go in.");
        _sequence = MayBe("sequence", WordsForm.All, "In what order and in how many rounds.");
    }

    protected override Fastener Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed("fastener." + place.Id), got.Of(_holds), got.Of(_quantity), got.Of(_torque), got.Of(_matters))
    {
        Angle = got.Of(_angle),
        Thread = got.Of(_thread)?.Keyed($"fastener.{place.Id}.thread"),
        Renewal = got.Of(_renewal)?.Keyed($"fastener.{place.Id}.renewal"),
        Sequence = got.Of(_sequence)?.Keyed($"fastener.{place.Id}.sequence"),
    };
}
