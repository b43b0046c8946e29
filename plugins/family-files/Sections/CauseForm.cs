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
    private readonly Field<double?> _strength;
    private readonly Field<bool> _outside;
    private readonly Field<Source?> _source;

    public CauseForm()
        : base("cause", "Something that may lie behind a symptom, and the signs that show it.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _prior = Need("prior", Plain.Number, "How common it is among units that come in, between 0 and 1.");
        _strength = May("prior-strength", Plain.NumberIfAny, null, "How many units the prior is worth against counted ones.", "priorStrength");
        _outside = May("outside", Plain.YesNo, false, "Whether it lies outside the gearbox.");
        _brings = Some("brings", new ListForm<SymptomLink>(new LinkForm()), "The symptoms it brings.", "explains");
        _signs = Some("signs", new ListForm<Sign>(new SignForm()), "What can be found on the bench when it is so; any one is evidence.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for likelihoods.");
    }

    protected override Cause? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("likelihoods", node, place)) is { } source
        ? new Cause(place.Id, got.Of(_name).Keyed("cause." + place.Id), got.Of(_prior), got.Of(_brings), got.Of(_signs), source)
        {
            PriorStrength = got.Of(_strength),
            Outside = got.Of(_outside),
        }
        : null;

    private sealed class LinkForm : ObjectForm<SymptomLink>
    {
        private readonly Field<string> _symptom;
        private readonly Field<string?> _gear;
        private readonly Field<Likelihood> _chance;
        private readonly Field<SymptomContext?> _when;

        public LinkForm()
            : base("brings", "How likely a cause brings a symptom.")
        {
            _symptom = Need("symptom", Plain.Name, "The symptom.");
            _gear = MayBe("gear", Plain.Name, "The gear in which it brings it; any when not said.");
            _chance = Need("chance", LikelihoodForm.All, "Lowest defensible probability, best judgement, highest: [0.6, 0.8, 0.95].", "");
            _when = MayBe("when", new ContextForm(), "When it brings the symptom; always when not said.");
        }

        protected override SymptomLink Make(Got got, Node node, Place place, FileReading reading) =>
            new(got.Of(_symptom), got.Of(_chance).Low, got.Of(_chance).Best, got.Of(_chance).High, got.Of(_gear)) { When = got.Of(_when) };
    }
}
