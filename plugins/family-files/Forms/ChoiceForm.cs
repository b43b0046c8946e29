using System.Text.Json;
using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>One of a closed list of words: those of the contract, in lower case with hyphens.</summary>
internal sealed class ChoiceForm<T> : Form<T>
    where T : struct, Enum
{
    private readonly ImmutableSortedDictionary<string, T> _words =
        Enum.GetValues<T>().ToImmutableSortedDictionary(WordOf, v => v, StringComparer.Ordinal);

    public static string WordOf(T value) => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <inheritdoc/>
    public override T Read(Node node, Place place, FileReading reading)
    {
        if (node is ScalarNode scalar && _words.TryGetValue(scalar.Text, out var value))
            return value;
        var got = node is ScalarNode s ? $"'{s.Text}' is not one of them" : "One word is wanted here";
        reading.Error(node, place, "word-unknown", $"{got}: {string.Join(", ", _words.Keys)}.");
        return default;
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new() { ["enum"] = new JsonArray([.. _words.Keys.Select(w => JsonValue.Create(w))]) };
}
