using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>One reading of one file: what was found wrong, where everything stands, and what later parts of the file refer to.</summary>
/// <param name="file">Name for messages.</param>
internal sealed class FileReading(string file)
{
    private const int MostDiagnostics = 200;
    private const int MostMarks = 200_000;
    private readonly ImmutableArray<Diagnostic>.Builder _diagnostics = ImmutableArray.CreateBuilder<Diagnostic>();
    private readonly ImmutableArray<FieldMark>.Builder _marks = ImmutableArray.CreateBuilder<FieldMark>();

    public string File { get; } = file;

    public int Errors { get; private set; }

    public ImmutableArray<Diagnostic> Diagnostics => _diagnostics.ToImmutable();

    public ImmutableArray<FieldMark> Marks => _marks.ToImmutable();

    /// <summary>Sources by name.</summary>
    public Dictionary<string, Source> Sources { get; } = new(StringComparer.Ordinal);

    /// <summary>Attributes that several kinds share, by id.</summary>
    public Dictionary<string, AttributeDefinition> Attributes { get; } = new(StringComparer.Ordinal);

    /// <summary>The kind at each position, for the worked cases.</summary>
    public Dictionary<string, string> KindAt { get; } = new(StringComparer.Ordinal);

    public void Error(Node node, Place place, string code, string message) => Error(node.Line, node.Column, place.Written, code, message);

    public void Error(int line, int column, string field, string code, string message)
    {
        Errors++;
        if (_diagnostics.Count < MostDiagnostics)
            _diagnostics.Add(new Diagnostic(File, line, column, field, code, message, true));
    }

    /// <summary>Notes where a field stands. An entry that is like another one costs as much as if it were written out, so they are counted.</summary>
    /// <exception cref="FileFault">There are too many.</exception>
    public void Mark(Node node, Place place)
    {
        if (_marks.Count == MostMarks)
            throw new FileFault(node.Line, node.Column, "file-too-large", $"The file says more than {MostMarks} things, entries that are like others counted in full.");
        _marks.Add(new FieldMark(place.Field, place.Written, node.Line, node.Column));
    }

    /// <summary>The source of a number, a rule or a likelihood that names none: the one that the file declares under that name.</summary>
    public Source? Usual(string name, Node node, Place place)
    {
        if (Sources.TryGetValue(name, out var source))
            return source;
        Error(node, place, "source-missing", $"Nothing says where this comes from: give it a source, or declare '{name}' under sources for all that name none.");
        return null;
    }
}
