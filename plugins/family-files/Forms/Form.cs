using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>What may stand at one place of the file: how it is read, and how the schema tells of it. Both come from one declaration, so that they agree.</summary>
/// <typeparam name="T">What it is read as.</typeparam>
internal abstract class Form<T>
{
    /// <summary>Reads a value. What is wrong is reported; the result then means nothing.</summary>
    public abstract T? Read(Node node, Place place, FileReading reading);

    /// <summary>The value in words of JSON Schema 2020-12.</summary>
    public abstract JsonObject Schema(SchemaBook book);
}
