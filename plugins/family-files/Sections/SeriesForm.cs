using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>The thicknesses in which a selective part exists.</summary>
internal sealed class SeriesForm : ObjectForm<Series>
{
    private readonly Field<string?> _kind;
    private readonly Field<Length> _tolerance;
    private readonly Field<ImmutableArray<SeriesMember>> _members;
    private readonly Field<Source?> _source;

    public SeriesForm()
        : base("series", "The thicknesses in which a selective part really exists, thinnest first. A step is never assumed.")
    {
        _kind = MayBe("kind", Plain.Name, "The kind of part; the one of the same name when not said.");
        _tolerance = Need("tolerance", Plain.Length, "Half-width of the thickness tolerance of an unmeasured piece.");
        _members = Need("members", new MapForm<SeriesMember>(new MemberForm(), "what a person orders, such as 087"), "What exists, thinnest first, each with its thickness.");
        _source = MayBe("source", new SourceNameForm(), "Name of the source, when it is not the usual one for numbers.");
    }

    protected override Series? Make(Got got, Node node, Place place, FileReading reading) => (got.Of(_source) ?? reading.Usual("numbers", node, place)) is { } source
        ? new Series(place.Id, got.Of(_kind) ?? place.Id, got.Of(_members), got.Of(_tolerance), source)
        : null;

    private sealed class MemberForm : Form<SeriesMember>
    {
        public override SeriesMember Read(Node node, Place place, FileReading reading) => new(place.Id, Plain.Length.Read(node, place, reading));

        public override JsonObject Schema(SchemaBook book) => Plain.Length.Schema(book);
    }
}
