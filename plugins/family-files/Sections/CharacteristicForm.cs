using FamilyFiles.Forms;
using FamilyFiles.Values;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Something that is measured on a part.</summary>
internal sealed class CharacteristicForm : ObjectForm<Characteristic>
{
    private readonly Field<Wording> _name;
    private readonly Field<Dimension> _is;
    private readonly Field<Limits?> _new;
    private readonly Field<Limits?> _service;
    private readonly Field<Statistic> _counts;
    private readonly Field<int> _readings;
    private readonly Field<ImmutableArray<string>> _by;
    private readonly Field<Distribution> _unmeasured;
    private readonly Field<Criticality> _matters;
    private readonly Field<Derivation?> _follows;

    public CharacteristicForm()
        : base("characteristic", "Something that is measured on a part.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it, and how it is read.");
        _is = May("is", new ChoiceForm<Dimension>(), Dimension.Length, "What it is a quantity of; a length when not said.", "dimension");
        _new = MayBe("new", LimitsForm.All, "Limits of a new part: the drawing.");
        _service = MayBe("service", LimitsForm.All, "Limits to go back into service.");
        _counts = May("counts", new ChoiceForm<Statistic>(), Statistic.Mean, "Which of several readings is judged: mean (when not said), min for a worn shaft, max for a worn bore, min-and-max, or spread (largest less smallest).", "report");
        _readings = May("readings", Plain.Whole, 1, "How many readings make a measurement; 1 when not said.", "minimumReadings");
        _by = Some("by", Plain.Names, "Types of instrument it may be measured with.", "methods");
        _unmeasured = May("unmeasured", new ChoiceForm<Distribution>(), Distribution.None, "How a part that was not measured lies between its new limits; none when nothing may be assumed.");
        _matters = May("matters", new ChoiceForm<Criticality>(), Criticality.Ordinary, "What hangs on it; safety-critical asks for a signature.", "criticality");
        _follows = MayBe("follows", new DerivationForm(), "How it follows from others of the same part, when it is not read.", "derivedFrom");
    }

    protected override Characteristic Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed($"{place.Owner}.{place.Id}"), got.Of(_is), got.Of(_counts), got.Of(_readings),
        Counted(got.Of(_new), got.Of(_is)), Counted(got.Of(_service), got.Of(_is)), got.Of(_unmeasured), got.Of(_matters), got.Of(_follows), got.Of(_by));

    /// <summary>A plain number is a ratio, unless what is measured is a count.</summary>
    private static Limits? Counted(Limits? limits, Dimension dimension) => limits is null || dimension != Dimension.Count
        ? limits
        : new Limits(Counted(limits.Low), Counted(limits.High), Counted(limits.Target), limits.Source);

    private static Quantity? Counted(Quantity? end) => end is Real { Dimension: Dimension.Ratio } plain ? new Real(plain.Si, Dimension.Count) : end;

    /// <summary>A sum of other characteristics, or a named function of them.</summary>
    private sealed class DerivationForm : Form<Derivation>
    {
        private readonly EitherForm<Derivation> _either = new(new ScalarForm<Derivation>("gap-form", GapText.Wanted, ["string"], t => new Linear(GapText.Read(t))), new FunctionForm());

        public override Derivation? Read(Node node, Place place, FileReading reading) => _either.Read(node, place, reading);

        public override JsonObject Schema(SchemaBook book) => _either.Schema(book);
    }

    private sealed class FunctionForm : ObjectForm<Derivation>
    {
        private readonly Field<string> _function;
        private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _of;

        public FunctionForm()
            : base("function", "A function that the engine knows by name.")
        {
            _function = Need("function", Plain.Name, "Its name in the engine's library.");
            _of = Need("of", new MapForm<KeyValuePair<string, string>>(new PairForm(), "names of the arguments"), "Argument to the characteristic that feeds it.");
        }

        protected override Derivation Make(Got got, Node node, Place place, FileReading reading) => new Named(
            got.Of(_function),
            got.Of(_of).ToImmutableSortedDictionary(p => p.Key, p => Address.TryParse(p.Value) ?? new Address("", p.Value), StringComparer.Ordinal));
    }
}
