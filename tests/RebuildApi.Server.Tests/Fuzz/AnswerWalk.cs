using System.Collections.Concurrent;
using System.Text;
using System.Text.RegularExpressions;
using RebuildApi.Server.Tests.Fuzz.Rows;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz;

/// <summary>Goes to every operation of the document in one way after another, and notes what is answered and what is wrong with it.</summary>
internal sealed partial class AnswerWalk(ApiDocument document, AnswerCheck check)
{
    private static readonly byte[] TooMuch = new byte[17 << 20];
    private readonly Operation[] _operations = [.. document.Operations];

    public ConcurrentBag<string> Faults { get; } = [];

    /// <summary>Requests that each bring about one answer; another one is a fault.</summary>
    public async Task Rows(HttpClient http, PlayedShop shop, params IEnumerable<Row> rows)
    {
        foreach (var row in rows)
        {
            var operation = _operations.Single(o => o.ToString() == row.Operation);
            var path = shop.Filled(row.Address(operation));
            using var answer = await http.Send(operation.Verb, path, row.Body(operation), operation.Method == "get" ? null : operation.ContentType, [.. row.Headers(operation)]);
            if (await check.Fault(operation, answer) is { } fault)
                Faults.Add($"{operation} {path}: {fault}");
            if ((int)answer.StatusCode != row.Status)
                Faults.Add($"{operation} {path}: {(int)answer.StatusCode}, where {row.Status} was to be had: {await answer.Content.ReadAsStringAsync()}");
        }
    }

    /// <summary>As the examples show, twice; then as a client that has the answer already, that repeats a key, or that is behind.</summary>
    public async Task Examples(HttpClient http, PlayedShop shop)
    {
        foreach (var operation in _operations)
        {
            var path = shop.Filled(operation.Path) + Required(operation, shop.First);
            foreach (var key in IsSlow(operation) ? ["one"] : new[] { "one", "two" })
                await Try(http, operation, path, Example(operation), Keyed(key, operation));
            if (operation.Method == "get")
                await Try(http, operation, path, null, ("If-None-Match", "*"));
            else
                await Try(http, operation, path, Encoding.UTF8.GetBytes((operation.Example ?? "{}") + " "), Keyed("one", operation));
            if (operation.Parameters.All(p => (string)p["name"]! != "If-Match"))
                continue;
            await Try(http, operation, path, Example(operation), ("Idempotency-Key", Key("behind", operation)));
            await Try(http, operation, path, Example(operation), ("If-Match", "\"z-1\""));
        }
    }

    /// <summary>With what has the right shape but makes no sense, until the answer says so.</summary>
    public async Task Odd(HttpClient http, PlayedShop shop, int most)
    {
        foreach (var operation in _operations.Where(o => o.Node["responses"]!["422"] is not null && !IsSlow(o)))
        {
            var maker = new RequestMaker(document, shop, new Random(7));
            for (var tries = 0; tries < most && !check.Seen.ContainsKey((operation.ToString(), "422")); tries++)
            {
                using var request = maker.Of(operation);
                await Note(operation, http.SendAsync(request));
            }
        }
    }

    /// <summary>With names that nobody has, queries that make no sense, from another site, with too much, and in another form.</summary>
    public async Task Refusals(HttpClient http)
    {
        foreach (var operation in _operations)
        {
            if (operation.Path.Contains('{', StringComparison.Ordinal))
                await Try(http, operation, Parameter().Replace(operation.Path, "nobody") + Required(operation, n => n), Example(operation), Right);
            await Try(http, operation, operation.Filled() + "?unkonwn=1", Example(operation), Right);
            if (operation.Node["responses"]!["406"] is not null)
                await Try(http, operation, operation.Filled(), Example(operation), [.. Right, ("Accept", "image/png")]);
            if (operation.Method == "get")
                continue;
            await Try(http, operation, operation.Filled(), Example(operation), [.. Right, ("Sec-Fetch-Site", "cross-site")]);
            if (operation.Node["responses"]!["413"] is not null)
                await Try(http, operation, operation.Filled(), TooMuch, Right);
            await Note(operation, http.Send(operation.Verb, operation.Filled(), "{}"u8.ToArray(), "text/plain", Right));
        }
    }

    /// <summary>The same request to every operation, one after the other.</summary>
    public async Task All(HttpClient http, Action? before = null, bool mayBreak = false)
    {
        foreach (var operation in _operations)
        {
            before?.Invoke();
            try
            {
                await Plain(http, operation, mayBreak);
            }
            catch (Exception e) when (e is OperationCanceledException or HttpRequestException or IOException)
            {
                Faults.Add($"{operation} is cut off: {e.Message}");
            }
        }
    }

    /// <summary>To every operation that says it may be late, at once; one that never ends is not seen.</summary>
    public Task AllThatMayBeLate(HttpClient http, PlayedShop shop) => Task.WhenAll(_operations.Where(o => o.Node["responses"]!["504"] is not null).Select(async o =>
    {
        try
        {
            var path = shop.Filled(o.Path) + Required(o, shop.First);
            await Note(o, http.Send(o.Verb, path, Example(o), o.Method == "get" ? null : o.ContentType, Right), mayBreak: true);
        }
        catch (OperationCanceledException)
        {
            Faults.Add($"{o} never ends.");
        }
        catch (HttpRequestException)
        {
            // It had begun to answer, so it could only be cut off: its 504 is not seen.
        }
    }));

    /// <summary>To those that know whose rules a unit is judged by, at addresses of what is there.</summary>
    public async Task Known(HttpClient http, PlayedShop shop)
    {
        foreach (var operation in _operations.Where(o => !check.Seen.ContainsKey((o.ToString(), "409"))))
            await Try(http, operation, shop.Filled(operation.Path) + Required(operation, shop.First), Example(operation), Keyed("known", operation));
    }

    // Each of these works for a good part of a second.
    private static bool IsSlow(Operation operation) => FuzzTests.Slow.Any(s => operation.Path.EndsWith(s, StringComparison.Ordinal));

    private Task Plain(HttpClient http, Operation operation, bool mayBreak) =>
        Note(operation, http.Send(operation.Verb, operation.Filled() + Required(operation, n => "1"), Example(operation), operation.Method == "get" ? null : operation.ContentType, Right), mayBreak);

    private static string Key(string word, Operation operation) => $"{word}-{operation.Method}-{operation.Path}";

    // A key only where the document takes one.
    private static (string, string)[] Keyed(string word, Operation operation) => operation.Parameters.Any(p => (string)p["name"]! == "Idempotency-Key")
        ? [("Idempotency-Key", Key(word, operation)), ("If-Match", "*")]
        : [("If-Match", "*")];

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

    private Task Try(HttpClient http, Operation operation, string path, byte[]? body, params (string, string)[] headers) =>
        Note(operation, http.Send(operation.Verb, path, body, body is null ? null : operation.ContentType, headers));

    private async Task Note(Operation operation, Task<HttpResponseMessage> sent, bool mayBreak = false)
    {
        using var answer = await sent;
        if (await check.Fault(operation, answer, mayBreak) is { } fault)
            Faults.Add($"{operation} {answer.RequestMessage!.RequestUri!.PathAndQuery}: {fault}");
    }

    [GeneratedRegex(@"\{\w+\}")]
    private static partial Regex Parameter();
}
