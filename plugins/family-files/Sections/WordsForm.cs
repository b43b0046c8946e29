using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>Words shown to a person, in English, or in several languages under their tags.</summary>
/// <param name="Key">A key of the author's own, or none for the usual one.</param>
/// <param name="ByCulture">Language tag to words.</param>
internal sealed record Wording(string? Key, ImmutableSortedDictionary<string, string> ByCulture)
{
    /// <summary>The words under the author's key, or else the usual one.</summary>
    public Text Keyed(string usual) => new(Key ?? usual, ByCulture);
}

/// <summary>Reads words: one text in English, or an entry with <c>en</c>, other languages and perhaps a <c>key</c>.</summary>
internal sealed class WordsForm : Form<Wording>
{
    private const string Wanted = "Words in English, or an entry such as { en: Third gear, de: Drittes Rad }.";
    private const string KeyName = "key";

    public static WordsForm All { get; } = new();

    /// <inheritdoc/>
    public override Wording? Read(Node node, Place place, FileReading reading)
    {
        if (node is ScalarNode { Text.Length: > 0 } scalar)
            return new Wording(null, ImmutableSortedDictionary<string, string>.Empty.Add("en", scalar.Text));
        if (node is MapNode map && map.Entries.All(e => e.Value is ScalarNode) && map.Find("en") is not null)
        {
            var words = map.Entries.Where(e => e.Key.Text != KeyName).ToImmutableSortedDictionary(e => e.Key.Text, e => ((ScalarNode)e.Value).Text, StringComparer.Ordinal);
            return new Wording((map.Find(KeyName) as ScalarNode)?.Text, words);
        }

        reading.Error(node, place, "words-form", Wanted);
        return null;
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => book.Refer("words", () => new JsonObject
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = new JsonArray("string", "number") },
            new JsonObject { ["type"] = "object", ["required"] = new JsonArray("en"), ["additionalProperties"] = new JsonObject { ["type"] = "string" } }),
        ["$comment"] = Wanted,
    });
}
