using System.Globalization;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Makes bodies from the schemas of the document: of the right shape, filled with words that the examples use, and sometimes with odd ones.</summary>
internal sealed class BodyMaker(ApiDocument document, Random random)
{
    private const int Deepest = 8;

    private readonly JsonObject _schemas = document.Root["components"]!["schemas"]!.AsObject();
    private readonly ILookup<string, JsonNode> _words = document.Operations
        .Where(o => o is { Example: not null, TakesLines: false })
        .SelectMany(o => Members(JsonNode.Parse(o.Example!)!)).ToLookup(m => m.Name, m => m.Value, StringComparer.Ordinal);

    /// <summary>A body of the shape that an operation takes.</summary>
    public string Of(JsonObject schema) => Make(schema, "", 0)?.ToJsonString() ?? "null";

    private JsonNode? Make(JsonObject schema, string name, int depth)
    {
        if (schema["$ref"] is { } reference)
            return Make(_schemas[((string)reference!).Split('/')[^1]]!.AsObject(), name, depth);
        if (schema["enum"] is JsonArray words)
            return Pick(words)!.DeepClone();
        var known = _words[name].ToArray();
        if (known.Length > 0 && random.NextDouble() < 0.7)
            return known[random.Next(known.Length)].DeepClone();
        return TypeOf(schema) switch
        {
            "object" => Map(schema, depth),
            "array" => List(schema, name, depth),
            "integer" => Whole(schema),
            "number" => JsonNode.Parse(OddWords.Numbers[random.Next(OddWords.Numbers.Length)]),
            "boolean" => random.Next(2) == 0,
            "null" => null,
            _ => Text(schema),
        };
    }

    private JsonObject Map(JsonObject schema, int depth)
    {
        var map = new JsonObject();
        var required = schema["required"]?.AsArray().Select(r => (string)r!).ToHashSet() ?? [];
        foreach (var (name, property) in schema["properties"]?.AsObject() ?? [])
        {
            if (required.Contains(name) || (depth < Deepest && random.NextDouble() < 0.4))
                map[name] = Make(property!.AsObject(), name, depth + 1);
        }

        return map;
    }

    private JsonArray List(JsonObject schema, string name, int depth)
    {
        var least = (int?)schema["minItems"] ?? 0;
        var count = Math.Min((int?)schema["maxItems"] ?? 3, least + random.Next(3));
        return [.. Enumerable.Range(0, count).Select(_ => Make(schema["items"]!.AsObject(), name, depth + 1))];
    }

    private JsonNode Whole(JsonObject schema)
    {
        var (low, high) = ((int?)(decimal?)schema["minimum"] ?? -10, (int?)Math.Min((decimal?)schema["maximum"] ?? 100, int.MaxValue) ?? 100);
        return random.Next(4) switch { 0 => low, 1 => high, _ => (int)Math.Clamp(low + (long)random.Next(10), low, high) };
    }

    private JsonNode Text(JsonObject schema) => (string?)schema["format"] switch
    {
        "date" => "2026-03-0" + random.Next(1, 10).ToString(CultureInfo.InvariantCulture),
        "date-time" => "2026-03-02T12:00:0" + random.Next(0, 10).ToString(CultureInfo.InvariantCulture) + "Z",
        _ when schema["pattern"] is not null => "id-" + random.Next(50).ToString(CultureInfo.InvariantCulture),
        _ => OddWords.Texts[random.Next(OddWords.Texts.Length)],
    };

    private static string? TypeOf(JsonObject schema) => schema["type"] switch
    {
        JsonArray many => many.Select(t => (string)t!).FirstOrDefault(t => t != "null"),
        JsonValue one => (string)one!,
        _ => schema["properties"] is null ? null : "object",
    };

    private JsonNode? Pick(JsonArray from) => from[random.Next(from.Count)];

    private static IEnumerable<(string Name, JsonNode Value)> Members(JsonNode node) => node switch
    {
        JsonObject map => map.Where(m => m.Value is not null).SelectMany(m => Members(m.Value!).Prepend((m.Key, m.Value!))),
        JsonArray list => list.Where(e => e is not null).SelectMany(e => Members(e!)),
        _ => [],
    };
}
