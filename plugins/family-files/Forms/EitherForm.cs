using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>A value in short, or as an entry with fields when there is more to say.</summary>
/// <param name="brief">The usual way, as one text.</param>
/// <param name="full">The way with fields.</param>
internal sealed class EitherForm<T>(Form<T> brief, Form<T> full) : Form<T>
{
    /// <inheritdoc/>
    public override T? Read(Node node, Place place, FileReading reading) => (node is MapNode ? full : brief).Read(node, place, reading);

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new() { ["anyOf"] = new JsonArray(brief.Schema(book), full.Schema(book)) };
}
