using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Where numbers come from: how much weight it carries, and words that a person can follow.</summary>
internal sealed class SourceForm : Form<Source>
{
    private const string Wanted = "One of published, common-practice, judgement or invented, with the citation: { published: document and clause }.";

    /// <inheritdoc/>
    public override Source? Read(Node node, Place place, FileReading reading)
    {
        var kinds = Enum.GetValues<SourceKind>().ToDictionary(ChoiceForm<SourceKind>.WordOf, k => k);
        if (node is MapNode { Entries: [var only] } && kinds.TryGetValue(only.Key.Text, out var kind) && only.Value is ScalarNode { Text.Length: > 0 } citation)
            return reading.Sources[place.Id] = new Source(kind, citation.Text);
        reading.Error(node, place, "source-form", Wanted);
        return null;
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => book.Refer("source", () => new JsonObject
    {
        ["description"] = Wanted,
        ["type"] = "object",
        ["minProperties"] = 1,
        ["maxProperties"] = 1,
        ["additionalProperties"] = false,
        ["properties"] = new JsonObject(Enum.GetValues<SourceKind>().Select(k => KeyValuePair.Create<string, JsonNode?>(ChoiceForm<SourceKind>.WordOf(k), new JsonObject { ["type"] = "string" }))),
    });
}

/// <summary>The name of a declared source.</summary>
internal sealed class SourceNameForm : Form<Source>
{
    /// <inheritdoc/>
    public override Source? Read(Node node, Place place, FileReading reading)
    {
        if (node is ScalarNode scalar && reading.Sources.TryGetValue(scalar.Text, out var source))
            return source;
        reading.Error(node, place, "source-unknown", $"A name of those under sources is wanted: {string.Join(", ", reading.Sources.Keys)}.");
        return null;
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "string" };
}
