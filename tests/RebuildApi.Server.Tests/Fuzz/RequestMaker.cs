using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Makes requests for an operation: addresses of things that are there and of some that are not, queries, headers and bodies, right and wrong.</summary>
internal sealed class RequestMaker(ApiDocument document, PlayedShop shop, Random random)
{
    private readonly BodyMaker _maker = new(document, random);
    private readonly BodyBreaker _breaker = new(random);

    public HttpRequestMessage Of(Operation operation)
    {
        var request = new HttpRequestMessage(operation.Verb, new Uri(shop.Filled(operation.Path, random) + Query(operation), UriKind.Relative));
        if (operation.Method != "get")
            request.Content = Content(operation);
        foreach (var (name, value) in Headers(operation))
            request.Headers.TryAddWithoutValidation(name, value);
        return request;
    }

    private ByteArrayContent Content(Operation operation)
    {
        var content = new ByteArrayContent(operation.TakesBody ? Body(operation) : "{}"u8.ToArray());
        content.Headers.TryAddWithoutValidation("Content-Type", operation.ContentType);
        return content;
    }

    private byte[] Body(Operation operation)
    {
        var schema = operation.Node["requestBody"]!["content"]![operation.ContentType]!["schema"]!.AsObject();
        var shown = random.Next(2) == 0 || operation.TakesLines ? operation.Example : null;
        if (shown is null && (string?)schema["type"] == "string")
            return Noise();
        var good = shown ?? _maker.Of(schema);
        return random.Next(2) == 0 ? Encoding.UTF8.GetBytes(good) : operation.TakesLines ? Encoding.UTF8.GetBytes(good[..random.Next(good.Length)]) : _breaker.Broken(good);
    }

    // A file has no shape that the document could say.
    private byte[] Noise()
    {
        var bytes = new byte[random.Next(1, 200)];
        random.NextBytes(bytes);
        return bytes;
    }

    private string Query(Operation operation)
    {
        var pairs = operation.Parameters.Where(p => (string)p["in"]! == "query")
            .Where(p => (bool?)p["required"] == true || random.Next(4) == 0 || IsAlways(operation, (string)p["name"]!))
            .Select(p => (string)p["name"]! + "=" + Uri.EscapeDataString(Value(operation, p)));
        var query = string.Join('&', pairs);
        return query.Length == 0 ? "" : "?" + query;
    }

    // Events would go on for minutes, and plug-ins serve other tests too.
    private static bool IsAlways(Operation operation, string name) => name is "seconds" || (name is "dryRun" && operation.Path.Contains("/plugins/", StringComparison.Ordinal));

    private string Value(Operation operation, JsonObject parameter)
    {
        var name = (string)parameter["name"]!;
        if (IsAlways(operation, name))
            return name is "seconds" ? "0" : "true";
        if (random.Next(4) == 0)
            return OddWords.Texts[random.Next(OddWords.Texts.Length)];
        if (parameter["schema"]!["enum"] is JsonArray words)
            return (string)words[random.Next(words.Count)]!;
        return (string?)parameter["schema"]!["type"] switch
        {
            "integer" => OddWords.Numbers[random.Next(OddWords.Numbers.Length)],
            "boolean" => random.Next(2) == 0 ? "true" : "false",
            _ => shop.Query(name, random),
        };
    }

    private IEnumerable<(string Name, string Value)> Headers(Operation operation)
    {
        foreach (var parameter in operation.Parameters.Where(p => (string)p["in"]! == "header" && random.Next(10) > 0))
        {
            yield return (string)parameter["name"]! switch
            {
                "Idempotency-Key" => ("Idempotency-Key", random.Next(8) == 0 ? "again" : "key-" + random.Next()),
                "If-Match" => ("If-Match", random.Next(3) == 0 ? "\"u-1\"" : "*"),
                var other => (other, random.Next(3) == 0 ? "*" : "\"u-1\""),
            };
        }
    }
}
