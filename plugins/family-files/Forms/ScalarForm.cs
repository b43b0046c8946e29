using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>A value written as one text: <c>0.010 to 0.020 in</c>.</summary>
/// <param name="code">Code of the diagnostic when it can't be read.</param>
/// <param name="words">What is wanted, in plain words, with an example.</param>
/// <param name="types">The JSON types that editors take such a text for.</param>
/// <param name="parse">Reads the text; an exception of the kind <see cref="FormatException"/> says what is wrong.</param>
internal sealed class ScalarForm<T>(string code, string words, string[] types, Func<string, T> parse) : Form<T>
{
    /// <inheritdoc/>
    public override T? Read(Node node, Place place, FileReading reading)
    {
        if (node is not ScalarNode scalar)
        {
            reading.Error(node, place, code, $"One value is wanted here: {words}");
            return default;
        }

        try
        {
            return parse(scalar.Text);
        }
        catch (FormatException e)
        {
            reading.Error(node, place, code, e.Message.EndsWith('.') ? e.Message + " " + words : $"{e.Message}. {words}");
            return default;
        }
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["type"] = types.Length == 1 ? types[0] : new JsonArray([.. types.Select(t => JsonValue.Create(t))]),
        ["$comment"] = words,
    };
}
