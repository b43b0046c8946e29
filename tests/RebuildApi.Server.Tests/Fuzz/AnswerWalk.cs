using System.Text;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Goes to every operation of the document in one way after another, and notes what is answered.</summary>
internal sealed class AnswerWalk(ApiDocument document, AnswerCheck check)
{
    private static readonly byte[] TooMuch = new byte[17 << 20];
    private readonly Operation[] _operations = [.. document.Operations];

    public List<string> Faults { get; } = [];

    /// <summary>With names that nobody has.</summary>
    public async Task Names(HttpClient http)
    {
        foreach (var operation in _operations.Where(o => o.Path.Contains('{', StringComparison.Ordinal)))
            await Try(http, operation, System.Text.RegularExpressions.Regex.Replace(operation.Path, @"\{\w+\}", "nobody") + Required(operation, n => n), Example(operation), Right);
    }

    /// <summary>As the examples show, twice; then as a client that has the answer already, that repeats a key, or that is behind.</summary>
    public async Task Examples(HttpClient http, PlayedShop shop)
    {
        foreach (var operation in _operations)
        {
            var path = shop.Filled(operation.Path) + Required(operation, shop.First);
            foreach (var key in new[] { "one", "two" })
                await Try(http, operation, path, Example(operation), ("Idempotency-Key", key + operation), ("If-Match", "*"));
            if (operation.Method == "get")
                await Try(http, operation, path, null, ("If-None-Match", "*"));
            else
                await Try(http, operation, path, Encoding.UTF8.GetBytes((operation.Example ?? "{}") + " "), ("Idempotency-Key", "one" + operation), ("If-Match", "*"));
            await Behind(http, operation, path);
            await Odd(http, shop, operation);
        }
    }

    /// <summary>From another site, to another host, with too much, and in another form.</summary>
    public async Task Refusals(HttpClient http)
    {
        foreach (var operation in _operations)
        {
            await Try(http, operation, operation.Filled(), Example(operation), [.. Right, ("Host", "elsewhere.example")]);
            if (operation.Method == "get")
                continue;
            await Try(http, operation, operation.Filled(), Example(operation), [.. Right, ("Sec-Fetch-Site", "cross-site")]);
            await Try(http, operation, operation.Filled(), TooMuch, Right);
            await Note(operation, http.Send(operation.Verb, operation.Filled(), "{}"u8.ToArray(), "text/plain", Right));
        }
    }

    /// <summary>Faster than the service was told to take.</summary>
    public async Task Hurried()
    {
        await using var server = ShopServer.Open().With("Rebuild:RequestsPerMinute", "1");
        using var http = server.CreateClient();
        using var first = await http.GetAsync("/health/live");
        foreach (var operation in _operations)
            await Try(http, operation, operation.Filled(), Example(operation), Right);
    }

    /// <summary>With no plug-in, so that no family has rules.</summary>
    public async Task WithoutRules()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var shop = await PlayedShop.Play(http);
        server.LosePlugins();
        foreach (var operation in _operations)
            await Try(http, operation, shop.Filled(operation.Path) + Required(operation, shop.First), Example(operation), ("Idempotency-Key", "x" + operation), ("If-Match", "*"));
    }

    /// <summary>With records that fail.</summary>
    public async Task WithoutRecords(Func<CancellationToken, Exception> fault, params (string Setting, string Value)[] settings)
    {
        var store = FaultyStore.New();
        await using var server = ShopServer.Open().On(store);
        foreach (var (setting, value) in settings)
            server.With(setting, value);
        using var http = server.CreateClient();
        FaultyStore.Begin(store, fault);
        foreach (var operation in settings.Length > 0 ? _operations.Where(o => o is { Method: "get", Path: "/v1/units" }) : _operations)
            await Note(operation, Send(http, operation, operation.Filled() + Required(operation, n => "1"), Example(operation), Right), mayBreak: true);
    }

    private async Task Behind(HttpClient http, Operation operation, string path)
    {
        if (operation.Parameters.All(p => (string)p["name"]! != "If-Match"))
            return;
        await Try(http, operation, path, Example(operation), ("Idempotency-Key", "behind" + operation));
        await Try(http, operation, path, Example(operation), ("If-Match", "\"z-1\""));
    }

    /// <summary>With what has the right shape but makes no sense, until the answer says so.</summary>
    private async Task Odd(HttpClient http, PlayedShop shop, Operation operation)
    {
        var maker = new RequestMaker(document, shop, new Random(7));
        for (var tries = 0; tries < 40 && operation.Node["responses"]!["422"] is not null && !check.Seen.ContainsKey((operation.ToString(), "422")); tries++)
        {
            using var request = maker.Of(operation);
            await Note(operation, http.SendAsync(request));
        }
    }

    private static (string, string)[] Right => [("Idempotency-Key", "k"), ("If-Match", "*")];

    private static byte[]? Example(Operation operation) => operation.Method == "get" ? null : Encoding.UTF8.GetBytes(operation.Example ?? "{}");

    // Events would go on for minutes; plug-ins serve other tests too.
    private static string Required(Operation operation, Func<string, string> value)
    {
        var pairs = operation.Parameters.Where(p => (bool?)p["required"] == true && (string)p["in"]! == "query").Select(p => $"{p["name"]}={Uri.EscapeDataString(value((string)p["name"]!))}")
            .Concat(operation.Path == "/v1/events" ? ["seconds=0", "after=0"] : []).Concat(operation.Path.Contains("/plugins/{", StringComparison.Ordinal) && operation.Method != "get" ? ["dryRun=true"] : []);
        var query = string.Join('&', pairs);
        return query.Length == 0 ? "" : "?" + query;
    }

    private static Task<HttpResponseMessage> Send(HttpClient http, Operation operation, string path, byte[]? body, params (string, string)[] headers) =>
        http.Send(operation.Verb, path, body, operation.ContentType, headers);

    private Task Try(HttpClient http, Operation operation, string path, byte[]? body, params (string, string)[] headers) =>
        Note(operation, Send(http, operation, path, body, headers));

    private async Task Note(Operation operation, Task<HttpResponseMessage> sent, bool mayBreak = false)
    {
        using var answer = await sent;
        if (await check.Fault(operation, answer, mayBreak) is { } fault)
            Faults.Add($"{operation} {answer.RequestMessage!.RequestUri!.PathAndQuery}: {fault}");
    }
}
