using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Something that can be tried to tell causes apart.</summary>
internal sealed class TestForm : ObjectForm<DiagnosticTest>
{
    private readonly Field<Wording> _name;
    private readonly Field<TestStage> _stage;
    private readonly Field<decimal> _minutes;
    private readonly Field<ImmutableArray<TestLink>> _shows;
    private readonly Field<Likelihood> _otherwise;
    private readonly Field<Source?> _source;

    public TestForm()
        : base("test", "Something that can be tried to tell causes apart.")
    {
        _name = Need("name", WordsForm.All, "What is tried, put so that shown or not shown answers it.");
        _stage = Need("stage", new ChoiceForm<TestStage>(), "When it can be tried.");
        _minutes = Need("minutes", Plain.Minutes, "Bench time.");
        _shows = Need("shows", new MapForm<TestLink>(new LinkForm(), "names of causes"), "The causes that it shows, and how surely.");
        _otherwise = Need("otherwise", LikelihoodForm.All, "How likely it shows although none of them is there.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for likelihoods.");
    }

    protected override DiagnosticTest? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("likelihoods", node, place)) is { } source
        ? new DiagnosticTest(place.Id, got.Of(_name).Keyed("test." + place.Id), got.Of(_stage), got.Of(_minutes), got.Of(_shows), got.Of(_otherwise), source)
        : null;

    private sealed class LinkForm : Form<TestLink>
    {
        public override TestLink? Read(Node node, Place place, FileReading reading) =>
            LikelihoodForm.All.Read(node, place, reading) is { } shown ? new TestLink(place.Id, shown) : null;

        public override JsonObject Schema(SchemaBook book) => LikelihoodForm.All.Schema(book);
    }
}
