using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Something that can be seen on a part, asked as a question with a closed list of answers.</summary>
internal sealed class AttributeForm : ObjectForm<AttributeDefinition>
{
    private readonly bool _shared;
    private readonly Field<Wording> _ask;
    private readonly Field<ImmutableArray<(string Id, Wording Words)>> _values;

    /// <param name="shared">Whether it is declared for all kinds that name it.</param>
    public AttributeForm(bool shared)
        : base("attribute", "Something that can be seen on a part, from a closed list. Unknown is not on the list: it is the absence of a finding.")
    {
        _shared = shared;
        _ask = Need("ask", WordsForm.All, "The question to answer.", "name");
        _values = Need("values", new MapForm<(string Id, Wording Words)>(new ValueForm(), "ids of the answers, such as back-tapered"), "The answers allowed, each with its words.");
    }

    protected override AttributeDefinition Make(Got got, Node node, Place place, FileReading reading)
    {
        var made = new AttributeDefinition(
            place.Id, got.Of(_ask).Keyed("attribute." + place.Id),
            [.. got.Of(_values).Select(v => new AttributeValue(v.Id, v.Words.Keyed($"attribute.{place.Id}.{v.Id}")))]);
        if (_shared)
            reading.Attributes[place.Id] = made;
        return made;
    }

    private sealed class ValueForm : Form<(string Id, Wording Words)>
    {
        public override (string Id, Wording Words) Read(Node node, Place place, FileReading reading) => (place.Id, WordsForm.All.Read(node, place, reading)!);

        public override JsonObject Schema(SchemaBook book) => WordsForm.All.Schema(book);
    }
}

/// <summary>The attributes of a kind: names of shared ones, or entries of its own.</summary>
internal sealed class AttributesForm : Form<ImmutableArray<AttributeDefinition>>
{
    private readonly ListForm<string> _names = new(Plain.Name);
    private readonly MapForm<AttributeDefinition?> _own = new(new OwnForm(), "ids of what can be seen, such as dog.form");

    /// <inheritdoc/>
    public override ImmutableArray<AttributeDefinition> Read(Node node, Place place, FileReading reading)
    {
        if (node is MapNode)
            return [.. _own.Read(node, place, reading).OfType<AttributeDefinition>()];
        var before = reading.Errors;
        var names = _names.Read(node, place, reading);
        if (reading.Errors > before)
            return [];
        foreach (var unknown in names.Where(n => !reading.Attributes.ContainsKey(n)))
            reading.Error(node, place, "attribute-unknown", $"There is no '{Plain.Short(unknown)}' under attributes.");
        return [.. names.Select(n => reading.Attributes.GetValueOrDefault(n)).OfType<AttributeDefinition>()];
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new() { ["anyOf"] = new JsonArray(_names.Schema(book), _own.Schema(book)) };

    /// <summary>An entry of the kind's own, or <c>shared</c> for the one of that name under attributes.</summary>
    private sealed class OwnForm : Form<AttributeDefinition?>
    {
        private const string Shared = "shared";
        private readonly AttributeForm _own = new(shared: false);

        public override AttributeDefinition? Read(Node node, Place place, FileReading reading)
        {
            if (node is not ScalarNode { Text: Shared })
                return _own.Read(node, place, reading);
            if (reading.Attributes.TryGetValue(place.Id, out var shared))
                return shared;
            reading.Error(node, place, "attribute-unknown", $"There is no '{Plain.Short(place.Id)}' under attributes.");
            return null;
        }

        public override JsonObject Schema(SchemaBook book) => new() { ["anyOf"] = new JsonArray(new JsonObject { ["const"] = Shared }, _own.Schema(book)) };
    }
}
