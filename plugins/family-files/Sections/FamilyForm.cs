using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A whole family. Fields are read in this order, whatever their order in the file: sources and attributes before what names them.</summary>
internal sealed class FamilyForm : ObjectForm<Family>
{
    private readonly Field<string> _id;
    private readonly Field<string> _version;
    private readonly Field<Wording> _name;
    private readonly Field<ImmutableArray<Material>> _materials;
    private readonly Field<ImmutableArray<PartKind>> _kinds;
    private readonly Field<ImmutableArray<Position>> _positions;
    private readonly Field<ImmutableArray<ClearanceLoop>> _clearances;
    private readonly Field<ImmutableArray<Series>> _series;
    private readonly Field<ImmutableArray<Operation>> _operations;
    private readonly Field<ImmutableArray<PairingRule>> _pairings;
    private readonly Field<ImmutableArray<MatchedSet>> _sets;
    private readonly Field<ImmutableArray<GearMesh>> _meshes;
    private readonly Field<ImmutableArray<DamagePolicy>> _damage;
    private readonly Field<ImmutableArray<Symptom>> _symptoms;
    private readonly Field<ImmutableArray<Cause>> _causes;
    private readonly Field<ImmutableArray<DiagnosticTest>> _tests;
    private readonly Field<ImmutableArray<Fastener>> _fasteners;
    private readonly Field<ImmutableArray<Lubricant>> _lubricants;
    private readonly Field<ImmutableArray<FamilyGate>> _gates;
    private readonly Field<ImmutableArray<Text>> _cautions;
    private readonly Field<ImmutableArray<GoldenCase>> _golden;

    public FamilyForm()
        : base("family", "One gearbox design with its rules, as a shop owner writes it.")
    {
        _id = Need("family", Plain.Name, "Its id: lower-case words joined by hyphens.", "version.id");
        _version = Need("version", Plain.Name, "Version of its rules, such as 1.0.0; count up when a rule changes.", "version.semVer");
        _name = Need("name", WordsForm.All, "What a person calls it.");
        Need("sources", new MapForm<Source>(new SourceForm(), "names; numbers, rules, likelihoods and materials stand for all that name none"), "Where the numbers come from.");
        Some("attributes", new MapForm<AttributeDefinition>(new AttributeForm(shared: true), "ids such as vintage or dog.form"), "What can be seen on several kinds of part.");
        _materials = Some("materials", new MapForm<Material>(new MaterialForm(), "ids such as steel"), "What parts are made of.");
        _kinds = Need("kinds", new MapForm<PartKind>(new KindForm(), "ids such as third-gear"), "The sorts of part.");
        _positions = Need("positions", new MapForm<Position>(new PositionForm(), "ids such as third-gear"), "The places that parts fill, in the order in which the gearbox comes apart.");
        _clearances = Some("clearances", new MapForm<ClearanceLoop>(new ClearanceForm(), "ids such as third-end-play"), "The clearances.", "loops");
        _series = Some("series", new MapForm<Series>(new SeriesForm(), "ids such as snap-ring-3-4"), "The thicknesses in which selective parts exist.");
        _operations = Some("operations", new MapForm<Operation>(new OperationForm(), "ids such as face-hub-front"), "The rework that is permitted.");
        _pairings = Some("pairings", new MapForm<PairingRule>(new PairingForm(), "ids such as third-engagement"), "The relations that must hold between parts.");
        _sets = Some("sets", new MapForm<MatchedSet>(new SetForm(), "ids such as hub-and-sleeve"), "Parts that stay together.");
        _meshes = Some("meshes", new MapForm<GearMesh>(new MeshForm(), "ids such as third-mesh"), "Which gears run with which.");
        _damage = Some("damage", new ListForm<DamagePolicy>(new DamageForm()), "What each class of damage means for each kind.");
        _symptoms = Some("symptoms", new MapForm<Symptom>(new SymptomForm(), "ids such as growl"), "Complaints that an owner brings.");
        _causes = Some("causes", new MapForm<Cause>(new CauseForm(), "ids such as bearing-spalled"), "What may lie behind them.");
        _tests = Some("tests", new MapForm<DiagnosticTest>(new TestForm(), "ids such as engine-off-shift"), "What can be tried to tell causes apart.");
        _fasteners = Some("fasteners", new MapForm<Fastener>(new FastenerForm(), "ids such as cover-bolts"), "What is tightened to what.");
        _lubricants = Some("lubricants", new MapForm<Lubricant>(new LubricantForm(), "ids such as gearbox-oil"), "What is filled in or put on.");
        _gates = Some("gates", new MapForm<FamilyGate>(new GateForm(), "ids such as float-read"), "What is wanted done before a gearbox leaves a stage.");
        _cautions = Some("cautions", new MapForm<Text>(new CautionForm(), "ids such as interlock"), "What can hurt a person or the gearbox whatever the work.");
        _golden = Some("golden", new MapForm<GoldenCase>(new GoldenForm(), "what each case shows, in words"), "Worked cases that the rules must reproduce.");
    }

    protected override Family Make(Got got, Node node, Place place, FileReading reading)
    {
        var version = new FamilyVersion(got.Of(_id), got.Of(_version));
        return new Family(
            version, got.Of(_name).Keyed("family." + version.Id), got.Of(_materials), got.Of(_kinds),
            [.. got.Of(_positions).Select((p, i) => p.StripOrder == 0 ? p with { StripOrder = i + 1 } : p)],
            got.Of(_clearances), got.Of(_series), got.Of(_operations), got.Of(_pairings), got.Of(_sets), got.Of(_meshes), got.Of(_damage), [],
            got.Of(_symptoms), got.Of(_causes), got.Of(_cautions),
            [.. got.Of(_golden).Select(g => g with { Snapshot = g.Snapshot with { Family = version } })])
        {
            Tests = got.Of(_tests) is { IsEmpty: false } tests ? tests : null,
            Fasteners = got.Of(_fasteners) is { IsEmpty: false } fasteners ? fasteners : null,
            Lubricants = got.Of(_lubricants) is { IsEmpty: false } lubricants ? lubricants : null,
            Gates = got.Of(_gates) is { IsEmpty: false } gates ? gates : null,
        };
    }

    private sealed class CautionForm : Form<Text>
    {
        public override Text? Read(Node node, Place place, FileReading reading) => WordsForm.All.Read(node, place, reading)?.Keyed("caution." + place.Id);

        public override JsonObject Schema(SchemaBook book) => WordsForm.All.Schema(book);
    }
}
