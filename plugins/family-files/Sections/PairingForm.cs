using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A relation that must hold between parts.</summary>
internal sealed class PairingForm : ObjectForm<PairingRule>
{
    private readonly Field<Wording> _name;
    private readonly Field<string> _template;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _roles;
    private readonly Field<ImmutableArray<KeyValuePair<string, Quantity>>> _numbers;
    private readonly Field<ImmutableArray<KeyValuePair<string, string>>> _options;
    private readonly Field<Compatibility> _broken;
    private readonly Field<Severity> _severity;
    private readonly Field<Wording> _consequence;
    private readonly Field<ImmutableArray<Cure>> _cures;
    private readonly Field<Source?> _source;

    public PairingForm()
        : base("pairing", "A relation that must hold between parts: one of the engine's templates, with its roles filled in.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _template = Need("template", Plain.Name, "One of the engine's templates, such as engagement-form or attributes-equal.");
        _roles = Need("roles", new MapForm<KeyValuePair<string, string>>(new PairForm(), "names of the template's roles"), "Role to position, or position/feature, as the template asks.");
        _numbers = Some("numbers", new MapForm<KeyValuePair<string, Quantity>>(new NumberPairForm(), "names of the template's numbers"), "Numbers that the template asks for.", "parameters");
        _options = Some("options", new MapForm<KeyValuePair<string, string>>(new PairForm(), "names of the template's options"), "Words that the template asks for.");
        _broken = May("broken", new ChoiceForm<Compatibility>(), Compatibility.Incompatible, "The verdict when it does not hold; incompatible when not said.", "whenBroken");
        _severity = Need("severity", new ChoiceForm<Severity>(), "What it costs when it does not hold.");
        _consequence = Need("consequence", WordsForm.All, "What then happens, in plain words.");
        _cures = Some("cures", new MapForm<Cure>(new CureForm(), "ids of the cures"), "What mends it.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for rules.");
    }

    protected override PairingRule? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("rules", node, place)) is { } source
        ? new PairingRule(
            place.Id, got.Of(_name).Keyed("pairing." + place.Id), got.Of(_template), Sorted(got.Of(_roles)), Sorted(got.Of(_numbers)), Sorted(got.Of(_options)),
            got.Of(_broken), got.Of(_severity), got.Of(_consequence).Keyed($"pairing.{place.Id}.consequence"), got.Of(_cures), source)
        : null;

    private static ImmutableSortedDictionary<string, T> Sorted<T>(ImmutableArray<KeyValuePair<string, T>> pairs) => pairs.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private sealed class CureForm : ObjectForm<Cure>
    {
        private readonly Field<Wording> _do;
        private readonly Field<bool> _sufficient;
        private readonly Field<ImmutableArray<CureStep>> _fit;

        public CureForm()
            : base("cure", "Something that mends a broken pairing.")
        {
            _do = Need("do", WordsForm.All, "What to do, in plain words.", "text");
            _sufficient = May("sufficient", Plain.YesNo, false, "Whether the parts to fit alone make it compatible.");
            _fit = Some("fit", new ListForm<CureStep>(new StepForm()), "The parts to exchange.", "steps");
        }

        protected override Cure Make(Got got, Node node, Place place, FileReading reading) =>
            new(place.Id, got.Of(_do).Keyed($"pairing.{place.Owner}.{place.Id}"), got.Of(_sufficient), got.Of(_fit));
    }

    private sealed class StepForm : ObjectForm<CureStep>
    {
        private readonly Field<string> _position;
        private readonly Field<string?> _attribute;
        private readonly Field<string?> _value;
        private readonly Field<string?> _characteristic;
        private readonly Field<Limits?> _within;

        public StepForm()
            : base("part-to-fit", "Fit, at a position, a part that shows this or measures that.")
        {
            _position = Need("position", Plain.Name, "Where.");
            _attribute = MayBe("attribute", Plain.Name, "Which attribute.");
            _value = MayBe("value", Plain.Name, "Its value.");
            _characteristic = MayBe("characteristic", Plain.Name, "Which characteristic.");
            _within = MayBe("within", LimitsForm.All, "The limits it must lie in.");
        }

        protected override CureStep Make(Got got, Node node, Place place, FileReading reading) =>
            new(got.Of(_position), got.Of(_attribute), got.Of(_value), got.Of(_characteristic), got.Of(_within));
    }
}
