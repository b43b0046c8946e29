using FamilyFiles.Forms;
using FamilyFiles.Sections;
using FamilyFiles.Writing;
using FamilyFiles.Yaml;

namespace FamilyFiles;

/// <summary>Reads families that a shop owner writes as YAML, and writes families as such files. It declares no family of its own.</summary>
public sealed class FamilyFilesPlugin : IFamilyPlugin, IFamilyReader, IFamilyWriter
{
    private readonly FamilyForm _form = new();

    public PluginManifest Manifest { get; } = new("family-files", "1.0.0", "Saltmarsh Lane Gearboxes");

    public ImmutableArray<Family> Declare() => [];

    public HookAnswer Judge(string hookId, UnitSnapshot snapshot) => new([]);

    public ReadResult Read(string fileName, ReadOnlyMemory<byte> utf8)
    {
        var reading = new FileReading(fileName);
        try
        {
            var family = _form.Read(NodeReader.Read(utf8), Place.Root, reading);
            return new ReadResult(reading.Errors == 0 ? family : null, reading.Diagnostics) { Marks = reading.Marks };
        }
        catch (FileFault fault)
        {
            return new ReadResult(null, [new Diagnostic(fileName, fault.Line, fault.Column, "", fault.Code, fault.Message, true)]);
        }
    }

    public byte[] Write(Family family) => FamilyWriter.Write(family);

    /// <summary>The JSON Schema (2020-12) of a family file.</summary>
    public JsonObject Schema()
    {
        var book = new SchemaBook();
        var root = _form.Schema(book);
        root["$schema"] = "https://json-schema.org/draft/2020-12/schema";
        root["title"] = "Family file";
        root["$defs"] = book.Definitions();
        return root;
    }
}
