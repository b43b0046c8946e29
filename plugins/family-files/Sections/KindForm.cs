using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A sort of part.</summary>
internal sealed class KindForm : ObjectForm<PartKind>
{
    private readonly Field<Wording> _name;
    private readonly Field<string?> _material;
    private readonly Field<bool> _singleUse;
    private readonly Field<ImmutableArray<Characteristic>> _measures;
    private readonly Field<ImmutableArray<AttributeDefinition>> _shows;
    private readonly Field<ImmutableArray<ToothSet>> _teeth;
    private readonly Field<ImmutableArray<string>> _damage;

    public KindForm()
        : base("kind", "A sort of part: what is measured, seen and looked for on it.")
    {
        _name = Need("name", WordsForm.All, "What a person calls it.");
        _material = MayBe("material", Plain.Name, "What it is made of: a name under materials. Needed only where expansion with temperature matters.");
        _singleUse = May("single-use", Plain.YesNo, false, "Whether it is always replaced by a new one.", "singleUse");
        _teeth = Some("teeth", new ListForm<ToothSet>(new TeethForm()), "Its rows of running gear teeth.", "toothSets");
        _measures = Some("measures", new MapForm<Characteristic>(new CharacteristicForm(), "ids such as width or dog.length"), "What is measured on it.", "characteristics");
        _shows = Some("shows", new AttributesForm(), "What is seen on it: names under attributes, or entries of its own.", "attributes");
        _damage = Some("damage", Plain.Names, "The damage to look for, by the standard's class (ISO 15243 for bearings, ISO 10825 for gears).", "damageClasses");
    }

    protected override PartKind Make(Got got, Node node, Place place, FileReading reading) => new(
        place.Id, got.Of(_name).Keyed("kind." + place.Id), got.Of(_measures), got.Of(_shows), got.Of(_teeth), got.Of(_damage), got.Of(_material), got.Of(_singleUse));
}
