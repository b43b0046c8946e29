namespace FamilyFiles.Forms;

/// <summary>The named parts of the schema, each told once.</summary>
internal sealed class SchemaBook
{
    private readonly SortedDictionary<string, JsonObject> _definitions = new(StringComparer.Ordinal);

    /// <summary>Tells a part once and gives a reference to it.</summary>
    public JsonObject Refer(string name, Func<JsonObject> tell)
    {
        if (!_definitions.ContainsKey(name))
        {
            _definitions.Add(name, []);
            _definitions[name] = tell();
        }

        return new JsonObject { ["$ref"] = "#/$defs/" + name };
    }

    public JsonObject Definitions() => new(_definitions.Select(d => KeyValuePair.Create<string, JsonNode?>(d.Key, d.Value.DeepClone())));
}
