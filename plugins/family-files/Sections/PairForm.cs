using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Sections;

/// <summary>A name with a word.</summary>
internal sealed class PairForm : Form<KeyValuePair<string, string>>
{
    /// <inheritdoc/>
    public override KeyValuePair<string, string> Read(Node node, Place place, FileReading reading) => KeyValuePair.Create(place.Id, Plain.Phrase.Read(node, place, reading) ?? "");

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => Plain.Phrase.Schema(book);
}

/// <summary>A name with a quantity.</summary>
internal sealed class NumberPairForm : Form<KeyValuePair<string, Quantity>>
{
    /// <inheritdoc/>
    public override KeyValuePair<string, Quantity> Read(Node node, Place place, FileReading reading) => KeyValuePair.Create(place.Id, Plain.Quantity.Read(node, place, reading)!);

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => Plain.Quantity.Schema(book);
}
