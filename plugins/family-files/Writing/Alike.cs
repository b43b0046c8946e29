using FamilyFiles.Forms;
using FamilyFiles.Yaml;

namespace FamilyFiles.Writing;

/// <summary>Shortens a list: an entry that says mostly what an earlier one says names that one and says only what differs.</summary>
internal static class Alike
{
    private const int FewestShared = 3;

    public static MapNode? Shortened(MapNode? list)
    {
        if (list is null)
            return null;
        var models = new List<Entry>();
        var entries = ImmutableArray.CreateBuilder<Entry>();
        foreach (var entry in list.Entries)
        {
            var own = (MapNode)entry.Value;
            var model = models.Where(m => Covers((MapNode)m.Value, own)).MaxBy(m => Shared((MapNode)m.Value, own));
            if (model is not null && Shared((MapNode)model.Value, own) >= FewestShared)
            {
                entries.Add(entry with { Value = Rest(model, own) });
                continue;
            }

            models.Add(entry);
            entries.Add(entry);
        }

        return list with { Entries = entries.ToImmutable() };
    }

    /// <summary>Whether everything that the model says is said by the other too: nothing can be taken back.</summary>
    private static bool Covers(MapNode model, MapNode own) => model.Entries.All(e => own.Find(e.Key.Text) is not null);

    private static int Shared(MapNode model, MapNode own) => own.Entries.Count(e => IsSame(model.Find(e.Key.Text), e.Value));

    private static MapNode Rest(Entry model, MapNode own) => own with
    {
        Entries = [new Entry(new ScalarNode(Likeness.Name), model.Key), .. own.Entries.Where(e => !IsSame(((MapNode)model.Value).Find(e.Key.Text), e.Value))],
    };

    private static bool IsSame(Node? a, Node b) => (a, b) switch
    {
        (ScalarNode x, ScalarNode y) => x.Text == y.Text,
        (ListNode x, ListNode y) => x.Items.Length == y.Items.Length && x.Items.Zip(y.Items).All(p => IsSame(p.First, p.Second)),
        (MapNode x, MapNode y) => x.Entries.Length == y.Entries.Length
            && x.Entries.Zip(y.Entries).All(p => p.First.Key.Text == p.Second.Key.Text && IsSame(p.First.Value, p.Second.Value)),
        _ => false,
    };
}
