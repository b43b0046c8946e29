using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>One of a closed list of words, for a field that may be left out.</summary>
internal sealed class ChoiceIfAnyForm<T> : Form<T?>
    where T : struct, Enum
{
    private readonly ChoiceForm<T> _choice = new();

    /// <inheritdoc/>
    public override T? Read(Node node, Place place, FileReading reading) => _choice.Read(node, place, reading);

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => _choice.Schema(book);
}
