using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>Items in order.</summary>
/// <param name="item">What each is.</param>
internal sealed class ListForm<T>(Form<T> item) : Form<ImmutableArray<T>>
{
    /// <inheritdoc/>
    public override ImmutableArray<T> Read(Node node, Place place, FileReading reading)
    {
        if (node is not ListNode list)
        {
            reading.Error(node, place, "list-expected", "A list is wanted here: [a, b], or one item on each line after a hyphen.");
            return [];
        }

        var all = ImmutableArray.CreateBuilder<T>();
        foreach (var (value, i) in list.Items.Select((v, i) => (v, i)))
        {
            var here = place.Item(i);
            reading.Mark(value, here);
            all.Add(item.Read(value, here, reading)!);
        }

        return all.ToImmutable();
    }

    /// <inheritdoc/>
    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "array", ["items"] = item.Schema(book) };
}
