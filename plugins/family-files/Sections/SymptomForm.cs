using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A complaint that an owner brings.</summary>
internal sealed class SymptomForm : ObjectForm<Symptom>
{
    private readonly Field<Wording> _name;
    private readonly Field<ImmutableArray<string>> _gears;
    private readonly Field<Likelihood?> _leak;
    private readonly Field<Likelihood?> _loosely;

    public SymptomForm()
        : base("symptom", "A complaint that an owner brings.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _gears = Some("gears", Plain.Names, "The gears it may belong to; none when it is of the whole gearbox.");
        _leak = MayBe("by-itself", LikelihoodForm.All, "How likely it comes although none of the causes is there.", "leak");
        _loosely = MayBe("loosely", LikelihoodForm.All, "How likely an owner words it wider or narrower than it comes.");
    }

    protected override Symptom Make(Got got, Node node, Place place, FileReading reading) => new(place.Id, got.Of(_name).Keyed("symptom." + place.Id), got.Of(_gears))
    {
        Leak = got.Of(_leak),
        Loosely = got.Of(_loosely),
    };
}
