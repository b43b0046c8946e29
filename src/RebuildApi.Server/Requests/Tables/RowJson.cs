using System.Collections.Immutable;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using RebuildApi.Engine.Quantities;

namespace RebuildApi.Server.Requests.Tables;

/// <summary>
/// Writes a row of a table as the JSON of its request record, so that both are read by the same rules. Columns are named as a table of the record
/// names them: <c>price.minor</c> for a field of a field; pairs and lists stand in one cell with semicolons between.
/// </summary>
public static class RowJson
{
    private static readonly MethodInfo EntriesOf = typeof(RowJson).GetMethod(nameof(Entries), BindingFlags.NonPublic | BindingFlags.Static)!;

    /// <summary>The columns that a record has.</summary>
    public static ImmutableArray<string> Columns(Type record) => [.. Fields(record).SelectMany(f => IsRecord(f.Type) ? Columns(f.Type).Select(c => f.Name + "." + c) : [f.Name])];

    /// <summary>The JSON of a row; an empty cell is a field left out.</summary>
    public static JsonObject Of(Type record, IReadOnlyDictionary<string, string> cells, string prefix = "")
    {
        var row = new JsonObject();
        foreach (var (name, type) in Fields(record))
        {
            if (IsRecord(type))
                Nest(row, name, Of(type, cells, prefix + name + "."));
            else if (cells.TryGetValue(prefix + name, out var text))
                row[name] = Value(type, text);
        }

        return row;
    }

    /// <summary>A number as it stands; text when it is none, so that its field refuses it.</summary>
    public static JsonNode Number(string text) => NumberText.TryRead(text) is not null && IsJson(text) ? JsonNode.Parse(text)! : JsonValue.Create(text);

    private static void Nest(JsonObject row, string name, JsonObject nested)
    {
        if (nested.Count > 0)
            row[name] = nested;
    }

    private static JsonNode Value(Type type, string text) => type switch
    {
        _ when type == typeof(int) || type == typeof(decimal) => Number(text),
        _ when type == typeof(bool) => text is "true" or "false" ? JsonValue.Create(text == "true") : JsonValue.Create(text),
        _ when type == typeof(IReadOnlyDictionary<string, string>) => Pairs(text),
        { IsGenericType: true } => (JsonNode)EntriesOf.MakeGenericMethod(type.GetGenericArguments()).Invoke(null, [text])!,
        _ => JsonValue.Create(text),
    };

    private static JsonObject Pairs(string text)
    {
        var pairs = new JsonObject();
        foreach (var pair in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var at = pair.IndexOf('=', StringComparison.Ordinal);
            pairs[at < 0 ? pair : pair[..at].Trim()] = at < 0 ? "" : pair[(at + 1)..].Trim();
        }

        return pairs;
    }

    private static JsonArray Entries<T>(string text)
        where T : IFromCell => [.. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(T.FromCell)];

    private static IEnumerable<(string Name, Type Type)> Fields(Type record) => record.GetConstructors().MaxBy(c => c.GetParameters().Length)!.GetParameters()
        .Select(p => (JsonNamingPolicy.CamelCase.ConvertName(p.Name!), Nullable.GetUnderlyingType(p.ParameterType) ?? p.ParameterType));

    private static bool IsRecord(Type type) =>
        type is { IsClass: true, Namespace: { } space } && space.StartsWith("RebuildApi.Server", StringComparison.Ordinal);

    private static bool IsJson(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return document.RootElement.ValueKind == JsonValueKind.Number;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
