using System.Text.Json;
using System.Text.Json.Nodes;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>Makes a good body bad, one thing at a time.</summary>
public static class Mutations
{
    /// <summary>Bodies that no operation may take: not JSON, or not of the right shape.</summary>
    public static IEnumerable<(string What, byte[] Body)> SurelyBad(string good)
    {
        yield return ("empty", []);
        yield return ("cut off", Utf8(good[..^1]));
        yield return ("trailing", Utf8(good + "x"));
        yield return ("a number", Utf8("12"));
        yield return ("null", Utf8("null"));
        yield return ("a list", Utf8("[]"));
        yield return ("not UTF-8", [0x7b, 0xff, 0xfe, 0x7d]);
        yield return ("half a character", Utf8("""{ "tag": "\ud800" }"""));
        yield return ("nested too deeply", Utf8(new string('[', 200) + new string(']', 200)));
        yield return ("unknown field", Utf8(good.TrimEnd()[..^1] + ", \"unkonwn\": 1 }"));
        yield return ("field twice", Utf8(Twice(good)));
        foreach (var (path, node) in Nodes(JsonNode.Parse(good)!))
        {
            foreach (var (what, wrong) in WrongFor(node))
                yield return ($"{path}: {what}", Utf8(Replaced(good, path, wrong)));
        }
    }

    /// <summary>Every value of a body with its path.</summary>
    private static IEnumerable<(string Path, JsonNode Node)> Nodes(JsonNode node)
    {
        foreach (var child in Children(node))
        {
            yield return (child.GetPath(), child);
            foreach (var deeper in Nodes(child))
                yield return deeper;
        }
    }

    private static IEnumerable<JsonNode> Children(JsonNode node) => node switch
    {
        JsonObject map => map.Select(m => m.Value!).Where(v => v is not null),
        JsonArray list => list.Select(e => e!),
        _ => [],
    };

    private static IEnumerable<(string What, string Raw)> WrongFor(JsonNode node) => node.GetValueKind() switch
    {
        JsonValueKind.String => [("a number for text", "17"), ("a list for text", "[]"), ("NUL in text", "\"\\u0000\""), ("empty text", "\"\""), ("NaN", "NaN")],
        JsonValueKind.Number => [("text for a number", "\"17\""), ("NaN", "NaN"), ("Infinity", "Infinity"), ("1e999", "1e999"), ("1e-40", "1e-40"), ("huge", "123456789012345678901234567890")],
        JsonValueKind.Object when node["unit"] is not null && node["value"] is not null =>
            [("a bare number", "0.015"), ("wrong unit", """{ "value": 1, "unit": "furlong" }"""), ("another dimension", $$"""{ "value": 1, "unit": "{{((string?)node["unit"] == "N·m" ? "mm" : "N·m")}}" }"""), ("no unit", """{ "value": 1 }""")],
        JsonValueKind.Object => [("text for an object", "\"x\""), ("a list for an object", "[1]")],
        JsonValueKind.Array => [("an object for a list", "{}"), ("a list of null", "[null]"), ("a list of text", "[\"\"]")],
        _ => [("text for a truth value", "\"yes\"")],
    };

    private static string Replaced(string good, string path, string raw)
    {
        // A placeholder is put in first, since raw text such as NaN is no JSON and so no node.
        var root = JsonNode.Parse(good)!;
        var target = Nodes(root).First(n => n.Path == path).Node;
        target.ReplaceWith(JsonValue.Create("@@here@@"));
        return root.ToJsonString().Replace("\"@@here@@\"", raw, StringComparison.Ordinal);
    }

    private static string Twice(string good)
    {
        var first = JsonNode.Parse(good)!.AsObject().First();
        return good.TrimEnd()[..^1] + $", \"{first.Key}\": {first.Value!.ToJsonString()} }}";
    }

    private static byte[] Utf8(string text) => System.Text.Encoding.UTF8.GetBytes(text);
}
