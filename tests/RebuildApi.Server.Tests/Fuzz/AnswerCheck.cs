using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using RebuildApi.Server.Errors;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Holds each answer against the document: its status, its media type, its shape, and the code of its problem. Notes what was seen.</summary>
internal sealed class AnswerCheck(ApiDocument document)
{
    private readonly ConcurrentDictionary<string, JsonSchema> _shapes = new(StringComparer.Ordinal);
    private readonly JsonObject _schemas = document.Root["components"]!["schemas"]!.AsObject();

    /// <summary>The statuses that were seen, by operation.</summary>
    public ConcurrentDictionary<(string Operation, string Status), string> Seen { get; } = new();

    /// <summary>What is wrong with an answer; null when nothing is.</summary>
    public async Task<string?> Fault(Operation operation, HttpResponseMessage answer, bool mayBreak = false)
    {
        var status = ((int)answer.StatusCode).ToString(CultureInfo.InvariantCulture);
        var text = await answer.Content.ReadAsStringAsync();
        Seen.TryAdd((operation.ToString(), status), text);
        if (status == "500" && !mayBreak)
            return "500 " + Shown(text);
        if (operation.Node["responses"]![status] is not JsonObject documented)
            return $"{status} is not documented: {Shown(text)}";
        if (answer.StatusCode == System.Net.HttpStatusCode.NotModified)
            return text.Length == 0 ? null : "304 has a body";
        var type = answer.Content.Headers.ContentType?.MediaType ?? "";
        if (documented["content"]?[type] is not JsonObject content)
            return $"{status} is {type}, which is not documented: {Shown(text)}";
        if (status[0] is '4' or '5' && CodeFault(documented, text) is { } fault)
            return fault;
        return type is "application/json" or "application/problem+json" && content["schema"] is JsonObject schema ? ShapeFault(schema, text) : null;
    }

    private static string? CodeFault(JsonObject documented, string text)
    {
        if (Read(text) is not { } problem)
            return $"it is no JSON object: {text}";
        var code = (string?)problem["code"] ?? "";
        if (Problems.All.All(p => p.Code != code))
            return $"{code} is in no catalogue";
        return ((string)documented["description"]!).Contains(code + ": ", StringComparison.Ordinal) ? null : $"{code} is not documented: {Shown(text)}";
    }

    private static JsonObject? Read(string text)
    {
        try
        {
            return JsonNode.Parse(text) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private string? ShapeFault(JsonObject schema, string text)
    {
        using var instance = JsonDocument.Parse(WithoutMark(text));
        var shape = _shapes.GetOrAdd(schema.ToJsonString(), _ => Built(schema));
        if (shape.Evaluate(instance.RootElement).IsValid)
            return null;
        var why = shape.Evaluate(instance.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var faults = (why.Details ?? []).Where(d => d.Errors is { Count: > 0 }).Select(d => d.InstanceLocation + " " + string.Join(' ', d.Errors!.Values)).Take(4);
        return $"has another shape: {string.Join("; ", faults)}: {Shown(text)}";
    }

    // An answer may grow, so its schema is open; here what it has must be told in the document, but for the mark of a dry run.
    private static string WithoutMark(string text)
    {
        if (!text.EndsWith("\"dryRun\":true}", StringComparison.Ordinal))
            return text;
        var map = JsonNode.Parse(text)!.AsObject();
        map.Remove("dryRun");
        return map.ToJsonString();
    }

    private static JsonNode Closed(JsonNode schema)
    {
        var closed = schema.DeepClone();
        if (closed["properties"] is not null && closed["additionalProperties"] is null)
            closed["additionalProperties"] = false;
        return closed;
    }

    // Only what a schema needs goes with it: all four hundred would have to be built each time.
    private JsonSchema Built(JsonObject schema)
    {
        var needed = new SortedDictionary<string, JsonNode?>(StringComparer.Ordinal);
        Gather(schema, needed);
        var root = schema.DeepClone().AsObject();
        root["$defs"] = new JsonObject(needed.Select(n => KeyValuePair.Create(n.Key, (JsonNode?)Closed(n.Value!))));
        return JsonSchema.FromText(root.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal));
    }

    private void Gather(JsonNode? node, SortedDictionary<string, JsonNode?> needed)
    {
        if (node is JsonObject { } map && map["$ref"] is JsonValue reference && needed.TryAdd(((string)reference!).Split('/')[^1], null))
        {
            var name = ((string)reference!).Split('/')[^1];
            needed[name] = _schemas[name];
            Gather(_schemas[name], needed);
        }

        foreach (var child in node switch { JsonObject o => o.Select(m => m.Value), JsonArray a => a.AsEnumerable(), _ => [] })
            Gather(child, needed);
    }

    private static string Shown(string text) => text.Length > 300 ? text[..300] + "…" : text;
}
