using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>Entries that are called by their ids, in order. An entry that begins with <c>like: other</c> takes what it does not say from that one.</summary>
/// <param name="entry">What each is.</param>
/// <param name="idWords">What the ids are, for the schema.</param>
internal sealed class MapForm<T>(Form<T> entry, string idWords) : Form<ImmutableArray<T>>
{
    /// <inheritdoc/>
    public override ImmutableArray<T> Read(Node node, Place place, FileReading reading)
    {
        if (node is not MapNode map)
        {
            reading.Error(node, place, "entries-expected", $"Entries are wanted here, each under its own name: {idWords}");
            return [];
        }

        var all = ImmutableArray.CreateBuilder<T>();
        foreach (var e in map.Entries)
        {
            var here = place.Entry(e.Key.Text);
            reading.Mark(e.Key, here);
            all.Add(entry.Read(Likeness.Resolve(e.Value, map, here, reading), here, reading)!);
        }

        return all.ToImmutable();
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["description"] = idWords },
        ["additionalProperties"] = entry.Schema(book),
    };
}
