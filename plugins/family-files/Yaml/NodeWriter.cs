using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FamilyFiles.Yaml;

/// <summary>Writes nodes as YAML: short groups on one line, long ones in a block, a blank line before each section.</summary>
internal static class NodeWriter
{
    private const int Width = 140;
    private const int LongestLine = 120;

    public static string Write(MapNode root)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var settings = new EmitterSettings().WithBestIndent(2).WithBestWidth(Width).WithIndentedSequences();
        var emitter = new Emitter(text, settings);
        emitter.Emit(new StreamStart());
        emitter.Emit(new DocumentStart(null, null, isImplicit: true));
        Map(emitter, root, brief: false);
        emitter.Emit(new DocumentEnd(isImplicit: true));
        emitter.Emit(new StreamEnd());
        return Spaced(text.ToString());
    }

    private static void Any(Emitter emitter, Node node)
    {
        switch (node)
        {
            case ScalarNode scalar:
                emitter.Emit(new Scalar(AnchorName.Empty, TagName.Empty, scalar.Text, ScalarStyle.Any, isPlainImplicit: true, isQuotedImplicit: true));
                break;
            case ListNode list:
                emitter.Emit(new SequenceStart(AnchorName.Empty, TagName.Empty, isImplicit: true, IsFlat(list) ? SequenceStyle.Flow : SequenceStyle.Block));
                foreach (var item in list.Items)
                    Any(emitter, item);
                emitter.Emit(new SequenceEnd());
                break;
            case MapNode map:
                Map(emitter, map, IsFlat(map) && Length(map) <= LongestLine);
                break;
        }
    }

    private static void Map(Emitter emitter, MapNode map, bool brief)
    {
        emitter.Emit(new MappingStart(AnchorName.Empty, TagName.Empty, isImplicit: true, brief ? MappingStyle.Flow : MappingStyle.Block));
        foreach (var entry in map.Entries)
        {
            Any(emitter, entry.Key);
            Any(emitter, entry.Value);
        }

        emitter.Emit(new MappingEnd());
    }

    /// <summary>Whether nothing in it is a group itself, but for short lists.</summary>
    private static bool IsFlat(Node node) => node switch
    {
        ListNode list => list.Items.All(i => i is ScalarNode) && Length(list) <= Width * 4,
        MapNode map => map.Entries.All(e => e.Value is ScalarNode || (e.Value is ListNode list && list.Items.All(i => i is ScalarNode))),
        _ => true,
    };

    private static int Length(Node node) => node switch
    {
        ScalarNode scalar => scalar.Text.Length + 2,
        ListNode list => list.Items.Sum(Length) + 2,
        MapNode map => map.Entries.Sum(e => Length(e.Key) + Length(e.Value)),
        _ => 0,
    };

    private static string Spaced(string yaml) => string.Concat(yaml.Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select((line, i) => (i > 0 && line[0] is not (' ' or '-') && line.EndsWith(':') ? "\n" : "") + line + "\n"));
}
