using System.Collections.Immutable;
using System.Text.Json;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>A list.</summary>
public sealed class ListShape<T>(Shape entry, EntriesAttribute entries) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.Array)
            return Wrong(json, pointer, complaints, "a list");
        if (!entries.Holds(json.GetArrayLength(), pointer, complaints))
            return null;
        var read = json.EnumerateArray().Select((element, i) => entry.Read(element, Pointer.Entry(pointer, i), complaints)).ToArray();
        return read.Contains(null) ? null : read.Cast<T>().ToImmutableArray();
    }
}

/// <summary>A map from names to text.</summary>
public sealed class MapShape(Shape entry, EntriesAttribute entries) : Shape
{
    /// <inheritdoc/>
    public override object? Read(JsonElement json, string pointer, Complaints complaints)
    {
        if (json.ValueKind != JsonValueKind.Object)
            return Wrong(json, pointer, complaints, "an object");
        var members = Members.Of(json, pointer, complaints);
        if (!entries.Holds(members.Count, pointer, complaints))
            return null;
        var map = members.ToImmutableSortedDictionary(
            m => m.Key, m => (string)entry.Read(m.Value, Pointer.Member(pointer, m.Key), complaints)!, StringComparer.Ordinal);
        return map;
    }
}
