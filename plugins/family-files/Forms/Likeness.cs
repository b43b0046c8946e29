using FamilyFiles.Yaml;

namespace FamilyFiles.Forms;

/// <summary>An entry that is like another one of its list but for what it says itself: <c>second: { like: first, roles: … }</c>. One step, never a chain.</summary>
internal static class Likeness
{
    public const string Name = "like";

    /// <summary>The entry with the fields of its model filled in.</summary>
    public static Node Resolve(Node entry, MapNode siblings, Place place, FileReading reading)
    {
        if (entry is not MapNode own || own.Find(Name) is not { } like)
            return entry;
        var rest = own with { Entries = [.. own.Entries.Where(e => e.Key.Text != Name)] };
        if (like is not ScalarNode model || siblings.Find(model.Text) is not MapNode full || ReferenceEquals(full, own))
        {
            reading.Error(like, place.Member(Name, ""), "like-unknown", "The name of another entry of this list is wanted here.");
            return rest;
        }

        if (full.Find(Name) is not null)
            reading.Error(like, place.Member(Name, ""), "like-chain", $"'{model.Text}' is itself like another entry: name that one.");
        var said = rest.Entries.Select(e => e.Key.Text).ToHashSet(StringComparer.Ordinal);
        return rest with { Entries = [.. rest.Entries, .. full.Entries.Where(e => e.Key.Text != Name && !said.Contains(e.Key.Text))] };
    }
}
