using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A piece of rework or assembly.</summary>
internal sealed class OperationForm : ObjectForm<Operation>
{
    private readonly Field<Wording> _name;
    private readonly Field<string> _kind;
    private readonly Field<decimal> _minutes;
    private readonly Field<ImmutableArray<Effect>> _changes;
    private readonly Field<ImmutableArray<string>> _mends;
    private readonly Field<ImmutableArray<Wording>> _cautions;
    private readonly Field<ImmutableArray<string>> _measure;

    public OperationForm()
        : base("operation", "A piece of rework or assembly that the family permits.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _kind = Need("kind", Plain.Name, "The kind of part it is done to.");
        _minutes = Need("minutes", Plain.Minutes, "Bench time.");
        _changes = Some("changes", new MapForm<Effect>(new EffectForm(), "names of characteristics of the kind"), "What it does to characteristics; a cut is a negative change.", "effects");
        _mends = Some("mends", Plain.Names, "Classes of damage that it removes.");
        _cautions = Some("cautions", new ListForm<Wording>(WordsForm.All), "What can hurt a person or the part.");
        _measure = Some("then-measure", Plain.Names, "Characteristics that must be read again before the part goes on.", "remeasureGate");
    }

    protected override Operation Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed("operation." + place.Id), got.Of(_kind), got.Of(_changes), got.Of(_mends), got.Of(_minutes),
        [.. got.Of(_cautions).Select((c, i) => c.Keyed(string.Create(CultureInfo.InvariantCulture, $"operation.{place.Id}.caution-{i + 1}")))],
        got.Of(_measure));

    private sealed class EffectForm : ObjectForm<Effect>
    {
        private readonly Field<Window> _by;
        private readonly Field<Length> _step;
        private readonly Field<string> _datum;
        private readonly Field<Limits?> _remaining;
        private readonly Field<double?> _share;

        public EffectForm()
            : base("change", "A signed change of one characteristic.")
        {
            _by = Need("by", new ScalarForm<Window>("limits-form", "From the most negative to the most positive change, such as -0.025 to 0 in.", ["string"], LimitsText.Read), "From the most negative to the most positive change allowed.", "");
            _step = Need("step", Plain.Length, "The finest step that can be worked to.");
            _datum = Need("datum", Plain.Phrase, "The face or axis it is taken from.");
            _remaining = MayBe("remaining", LimitsForm.All, "What must remain afterwards.");
            _share = May("case-share", Plain.NumberIfAny, null, "The largest share of the hardened layer that may go.", "shareOfCaseDepth");
        }

        protected override Effect? Make(Got got, Node node, Place place, FileReading reading)
        {
            if (got.Of(_by) is { Low: Exact low, High: Exact high })
                return new Effect(new Address("", place.Id), low.Value, high.Value, got.Of(_step), got.Of(_datum), got.Of(_remaining), got.Of(_share));
            reading.Error(node, place, "limits-form", "A change has both ends, as lengths: -0.025 to 0 in.");
            return null;
        }
    }
}
