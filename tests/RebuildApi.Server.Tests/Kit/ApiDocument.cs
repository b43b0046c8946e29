using System.Text.Json.Nodes;

namespace RebuildApi.Server.Tests.Kit;

/// <summary>The served OpenAPI document, read as a client would.</summary>
public sealed class ApiDocument(JsonObject root)
{
    public JsonObject Root { get; } = root;

    public static async Task<ApiDocument> Of(HttpClient http) => new(await http.Read("/openapi/v1.json"));

    public IEnumerable<Operation> Operations =>
        from path in Root["paths"]!.AsObject()
        from operation in path.Value!.AsObject()
        select new Operation(path.Key, operation.Key, operation.Value!.AsObject());
}

/// <summary>One operation.</summary>
public sealed record Operation(string Path, string Method, JsonObject Node)
{
    public HttpMethod Verb => new(Method.ToUpperInvariant());

    public IEnumerable<JsonObject> Parameters => Node["parameters"]?.AsArray().Select(p => p!.AsObject()) ?? [];

    /// <summary>What its body is; JSON where it takes several, or none.</summary>
    public string ContentType => Node["requestBody"]?["content"]?.AsObject() is { } content && !content.ContainsKey("application/json")
        ? content.First().Key
        : "application/json";

    /// <summary>Whether its body is a stream of lines, of which each may be wrong by itself.</summary>
    public bool TakesLines => ContentType == "application/x-ndjson";

    /// <summary>Whether its body is a file, which has no shape to be wrong.</summary>
    public bool TakesFile => ContentType is "image/jpeg";

    public string? Example => Node["requestBody"]?["content"]?[ContentType]?["example"]?.ToJsonString();

    public bool TakesBody => Node["requestBody"] is not null;

    /// <summary>The address with things that exist filled in.</summary>
    public string Filled(string? plugin = null) => Path
        .Replace("{family}", ShopServer.Family, StringComparison.Ordinal)
        .Replace("{unit}", "u1", StringComparison.Ordinal)
        .Replace("{position}", "third-gear", StringComparison.Ordinal)
        .Replace("{instrument}", "mic-25", StringComparison.Ordinal)
        .Replace("{station}", "bench-1", StringComparison.Ordinal)
        .Replace("{component}", "c1", StringComparison.Ordinal)
        .Replace("{judgement}", "j1", StringComparison.Ordinal)
        .Replace("{attachment}", "a1", StringComparison.Ordinal)
        .Replace("{label}", "U1001A", StringComparison.Ordinal)
        .Replace("{part}", "hub-34", StringComparison.Ordinal)
        .Replace("{stock}", "shelf-1", StringComparison.Ordinal)
        .Replace("{reservation}", "v1", StringComparison.Ordinal)
        .Replace("{plan}", "p1", StringComparison.Ordinal)
        .Replace("{sequence}", "1", StringComparison.Ordinal)
        .Replace("{backup}", "b1", StringComparison.Ordinal)
        .Replace("{machining}", "m1", StringComparison.Ordinal)
        .Replace("{webhook}", "w1", StringComparison.Ordinal)
        .Replace("{delivery}", "w1-1", StringComparison.Ordinal)
        .Replace("{shop}", "harbour", StringComparison.Ordinal)
        .Replace("{token}", "tests", StringComparison.Ordinal)
        .Replace("{plugin}", plugin ?? ShopServer.Family, StringComparison.Ordinal);

    public override string ToString() => $"{Method.ToUpperInvariant()} {Path}";
}
