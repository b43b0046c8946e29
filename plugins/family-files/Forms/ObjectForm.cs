using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>An entry with named fields. A name that it does not know is refused with the nearest that it knows.</summary>
/// <param name="title">Its name in the schema.</param>
/// <param name="words">What it is, in plain words.</param>
internal abstract class ObjectForm<T>(string title, string words) : Form<T>
{
    private const string LikeWords = "Among entries that have names: the name of another one, from which everything is taken that is not said here.";
    private readonly List<IField> _fields = [];

    /// <summary>A field that must be there.</summary>
    protected Field<TField> Need<TField>(string name, Form<TField> form, string words, string? contract = null) => Add(new Field<TField>(name, contract ?? name, form, true, default!, words));

    /// <summary>A field that may be left out.</summary>
    protected Field<TField> May<TField>(string name, Form<TField> form, TField usual, string words, string? contract = null) => Add(new Field<TField>(name, contract ?? name, form, false, usual, words));

    /// <summary>A field that may be left out, and then is nothing.</summary>
    protected Field<TField?> MayBe<TField>(string name, Form<TField> form, string words, string? contract = null)
        where TField : class => Add(new Field<TField?>(name, contract ?? name, form!, false, null, words));

    /// <summary>A list that is empty when it is left out.</summary>
    protected Field<ImmutableArray<TField>> Some<TField>(string name, Form<ImmutableArray<TField>> form, string words, string? contract = null) => May(name, form, [], words, contract);

    /// <summary>Makes the result from fields that are all sound.</summary>
    protected abstract T? Make(Got got, Node node, Place place, FileReading reading);

    /// <inheritdoc/>
    public override T? Read(Node node, Place place, FileReading reading)
    {
        if (node is not MapNode map)
        {
            reading.Error(node, place, "fields-expected", $"Fields with their values are wanted here ({string.Join(", ", _fields.Select(f => f.Name))}).");
            return default;
        }

        var before = reading.Errors;
        foreach (var entry in map.Entries.Where(e => _fields.All(f => f.Name != e.Key.Text)))
            Unknown(entry.Key, place, reading);
        var got = new Dictionary<IField, object?>();
        foreach (var field in _fields)
        {
            if (map.Find(field.Name) is { } value)
                got[field] = field.Read(value, place, reading);
            else if (field.IsNeeded)
                reading.Error(node, place.Member(field.Name, ""), "field-missing", $"'{field.Name}' is missing. {field.Words}");
        }

        return reading.Errors > before ? default : Make(new Got(got), node, place, reading);
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => book.Refer(title, () =>
    {
        var schema = new JsonObject
        {
            ["description"] = words,
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = new JsonObject(
            [
                .. _fields.Select(f => KeyValuePair.Create<string, JsonNode?>(f.Name, f.Schema(book))),
                KeyValuePair.Create<string, JsonNode?>(Likeness.Name, new JsonObject { ["type"] = "string", ["description"] = LikeWords }),
            ]),
        };
        if (_fields.Where(f => f.IsNeeded).Select(f => (JsonNode)f.Name).ToArray() is { Length: > 0 } needed)
            schema["anyOf"] = new JsonArray(new JsonObject { ["required"] = new JsonArray(needed) }, new JsonObject { ["required"] = new JsonArray(Likeness.Name) });
        return schema;
    });

    private void Unknown(ScalarNode key, Place place, FileReading reading)
    {
        var nearest = _fields.Select(f => f.Name).MinBy(n => EditDistance.Of(n, key.Text))!;
        var hint = EditDistance.Of(nearest, key.Text) <= 3 ? $" Did you mean '{nearest}'?" : "";
        reading.Error(key, place.Member(key.Text, ""), "field-unknown", $"There is no field '{key.Text}' here.{hint} It takes {string.Join(", ", _fields.Select(f => f.Name))}.");
    }

    private Field<TField> Add<TField>(Field<TField> field)
    {
        _fields.Add(field);
        return field;
    }
}
