using System.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FamilyFiles.Yaml;

/// <summary>
/// Reads one YAML document into nodes, believing nothing. Anchors, aliases, tags and merge keys are refused: a short file could unfold into an endless
/// one. Depth, number of nodes and length of values are bounded, so that no file costs more than its size.
/// </summary>
internal sealed class NodeReader
{
    public const int MostBytes = 1 << 20;
    public const int MostNodes = 100_000;
    public const int Deepest = 16;
    public const int LongestValue = 4_000;
    private readonly IParser _parser;
    private int _nodes;

    private NodeReader(string text) => _parser = new Parser(new StringReader(text));

    /// <summary>Reads the one document of a file.</summary>
    /// <exception cref="FileFault">It is not one document of plain YAML within the bounds.</exception>
    public static Node Read(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length > MostBytes)
            throw new FileFault(0, 0, "file-too-large", $"The file holds {utf8.Length} bytes; {MostBytes} are allowed. Split the notes off, or shorten them.");
        var reader = new NodeReader(Decode(utf8));
        try
        {
            return reader.Document();
        }
        catch (YamlException e)
        {
            throw NotYaml((int)e.Start.Line, (int)e.Start.Column, e);
        }
        catch (Exception e) when (e is not FileFault)
        {
            // On some broken input the library's scanner fails with whatever its own slip throws; the last thing that it read tells where.
            throw NotYaml(Line(reader._parser.Current), Column(reader._parser.Current), e);
        }
    }

    private static FileFault NotYaml(int line, int column, Exception e) =>
        new(line, column, "yaml-form", "This is not YAML that can be read: " + Tame(e.Message));

    private static string Decode(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(utf8.Span).TrimStart('\uFEFF');
        }
        catch (ArgumentException)
        {
            throw new FileFault(0, 0, "not-utf8", "The file is not UTF-8 text: save it as UTF-8.");
        }
    }

    private Node Document()
    {
        _parser.Consume<StreamStart>();
        if (!_parser.TryConsume<DocumentStart>(out _))
            throw new FileFault(0, 0, "file-empty", "The file is empty.");
        var root = Next(1);
        _parser.Consume<DocumentEnd>();
        return _parser.TryConsume<StreamEnd>(out _) ? root : throw Fault(_parser.Current!, "second-document", "A file holds one family: take away the second document (---).");
    }

    private Node Next(int depth)
    {
        var at = _parser.Current!;
        if (++_nodes > MostNodes)
            throw Fault(at, "file-too-large", $"The file has more than {MostNodes} values.");
        if (depth > Deepest)
            throw Fault(at, "nested-too-deep", $"Values lie more than {Deepest} levels deep; nothing in a family file does.");
        if (at is AnchorAlias)
            throw Fault(at, "alias-refused", "References (*name) are not taken: write the value out.");
        if (at is not NodeEvent node)
            throw Fault(at, "yaml-form", "Something is missing here.");
        RefuseTricks(node);
        return node switch
        {
            Scalar => OfScalar(_parser.Consume<Scalar>()),
            SequenceStart => OfList(depth),
            _ => OfMap(depth),
        };
    }

    private static void RefuseTricks(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
            throw Fault(node, "alias-refused", "Marks for references (&name) are not taken: write the value out where it is needed.");
        if (!node.Tag.IsEmpty)
            throw Fault(node, "tag-refused", "Types (!name) are not taken: write the plain value.");
    }

    private static ScalarNode OfScalar(Scalar scalar) => scalar.Value.Length <= LongestValue
        ? new ScalarNode(scalar.Value, Line(scalar), Column(scalar))
        : throw Fault(scalar, "value-too-long", $"The value has {scalar.Value.Length} characters; {LongestValue} are allowed.");

    private ListNode OfList(int depth)
    {
        var start = _parser.Consume<SequenceStart>();
        var items = ImmutableArray.CreateBuilder<Node>();
        while (!_parser.TryConsume<SequenceEnd>(out _))
            items.Add(Next(depth + 1));
        return new ListNode(items.ToImmutable(), Line(start), Column(start));
    }

    private MapNode OfMap(int depth)
    {
        var start = _parser.Consume<MappingStart>();
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        while (!_parser.TryConsume<MappingEnd>(out _))
        {
            var key = Next(depth + 1) as ScalarNode ?? throw Fault(start, "name-form", "A name is a word, not a list or a group.");
            if (!names.Add(key.Text))
                throw new FileFault(key.Line, key.Column, "name-twice", $"'{key.Text}' stands twice here: put them together, or rename one.");
            entries.Add(new Entry(key, Next(depth + 1)));
        }

        return new MapNode(entries.ToImmutable(), Line(start), Column(start));
    }

    private static FileFault Fault(ParsingEvent at, string code, string message) => new(Line(at), Column(at), code, message);

    private static int Line(ParsingEvent? at) => (int)(at?.Start.Line ?? 0);

    private static int Column(ParsingEvent? at) => (int)(at?.Start.Column ?? 0);

    /// <summary>The library's words on one line: they go into answers and logs.</summary>
    private static string Tame(string words)
    {
        var line = string.Concat(words.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length <= 200 ? line : line[..200] + "…";
    }
}
