using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>What may lie behind a symptom.</summary>
internal sealed class CauseForm : ObjectForm<Cause>
{
    private readonly Field<Wording> _name;
    private readonly Field<double> _prior;
    private readonly Field<ImmutableArray<SymptomLink>> _brings;
    private readonly Field<ImmutableArray<Sign>> _signs;
    private readonly Field<Source?> _source;

    public CauseForm()
        : base("cause", "Something that may lie behind a symptom, and the signs that show it.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _prior = Need("prior", Plain.Number, "How common it is among units that come in, between 0 and 1.");
        _brings = Some("brings", new ListForm<SymptomLink>(new LinkForm()), "The symptoms it brings.", "explains");
        _signs = Some("signs", new ListForm<Sign>(new SignForm()), "What can be found on the bench when it is so; any one is evidence.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for likelihoods.");
    }

    protected override Cause? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("likelihoods", node, place)) is { } source
        ? new Cause(place.Id, got.Of(_name).Keyed("cause." + place.Id), got.Of(_prior), got.Of(_brings), got.Of(_signs), source)
        : null;

    private sealed class LinkForm : ObjectForm<SymptomLink>
    {
        private readonly Field<string> _symptom;
        private readonly Field<string?> _gear;
        private readonly Field<ImmutableArray<double>> _chance;

        public LinkForm()
            : base("brings", "How likely a cause brings a symptom.")
        {
            _symptom = Need("symptom", Plain.Name, "The symptom.");
            _gear = MayBe("gear", Plain.Name, "The gear in which it brings it; any when not said.");
            _chance = Need("chance", new ListForm<double>(Plain.Number), "Lowest defensible probability, best judgement, highest: [0.6, 0.8, 0.95].", "");
        }

        protected override SymptomLink? Make(Got got, Node node, Place place, FileReading reading)
        {
            if (got.Of(_chance) is [var low, var best, var high])
                return new SymptomLink(got.Of(_symptom), low, best, high, got.Of(_gear));
            reading.Error(node, place, "chance-form", "A chance has three numbers: lowest, best, highest.");
            return null;
        }
    }

    private sealed class SignForm : ObjectForm<Sign>
    {
        private readonly Field<string?> _position;
        private readonly Field<string?> _shows;
        private readonly Field<ImmutableArray<string>> _values;
        private readonly Field<ImmutableArray<string>> _damage;
        private readonly Field<string> _place;
        private readonly Field<string?> _outOfLimits;

        public SignForm()
            : base("sign", "Something that can be found on the bench: an attribute, damage, or something out of its limits.")
        {
            _position = MayBe("position", Plain.Name, "Where, for an attribute or damage.");
            _shows = MayBe("shows", Plain.Name, "Which attribute.", "attribute");
            _values = Some("values", Plain.Names, "Any of these values of the attribute.");
            _damage = Some("damage", Plain.Names, "Any of these classes of damage.", "classes");
            _place = May("place", Plain.Name, "*", "The feature or side of the damage.");
            _outOfLimits = MayBe("out-of-limits", Plain.Name, "A characteristic (position/characteristic) or a clearance that is nonconforming.", "subject");
        }

        protected override Sign? Make(Got got, Node node, Place place, FileReading reading)
        {
            if (got.Of(_outOfLimits) is { } subject && got.Of(_position) is null)
                return new VerdictSign(subject);
            if (got.Of(_position) is { } at && got.Of(_shows) is { } attribute && got.Of(_damage).IsEmpty)
                return new AttributeSign(at, attribute, got.Of(_values));
            if (got.Of(_position) is { } where && got.Of(_shows) is null && !got.Of(_damage).IsEmpty)
                return new DamageSign(where, got.Of(_damage), got.Of(_place));
            reading.Error(node, place, "sign-form", "A sign is { position, shows, values }, { position, damage, place } or { out-of-limits }, and only one of them.");
            return null;
        }
    }
}
