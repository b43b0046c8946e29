using System.Text.Json;
using RebuildApi.Server.Errors;

namespace RebuildApi.Server.Requests.Shapes;

/// <summary>How one sort of value is read from JSON: strictly, and complaining of everything that is wrong rather than of the first thing.</summary>
public abstract class Shape
{
    /// <summary>The value, or null when there was a complaint.</summary>
    public abstract object? Read(JsonElement json, string pointer, Complaints complaints);

    /// <summary>Notes that another type was needed.</summary>
    protected static object? Wrong(JsonElement json, string pointer, Complaints complaints, string needed)
    {
        complaints.Add(pointer, FieldProblems.WrongType, $"{Capital(needed)} is needed here, not {NameOf(json.ValueKind)}.", json.GetRawText(), [needed]);
        return null;
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string NameOf(JsonValueKind kind) => kind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        _ => "true or false",
    };
}
