using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Document;

/// <summary>Walks every operation of the document with bad input: problem details each time, never a fault, nothing half-written.</summary>
public sealed class EveryOperationTests
{
    [Fact]
    public async Task Every_operation_refuses_a_bad_body_with_a_problem_and_keeps_nothing()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var before = await Everything(http);
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o is { TakesBody: true, TakesLines: false, TakesFile: false }))
        {
            Assert.True(operation.Example is not null, $"{operation} has no example.");
            foreach (var (what, body) in Mutations.SurelyBad(operation.Example))
            {
                using var answer = await Send(http, operation, operation.Filled(), body);
                Assert.True((int)answer.StatusCode is >= 400 and < 500, $"{operation}, {what}: {answer.StatusCode} {await answer.Content.ReadAsStringAsync()}");
                await answer.Problem();
            }
        }

        Assert.Equal(before, await Everything(http));
    }

    [Fact]
    public async Task Every_stream_of_lines_answers_a_bad_line_in_its_place_and_goes_on()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var judged = new List<string>();
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o.TakesLines))
        {
            foreach (var (what, body) in Mutations.SurelyBad(operation.Example!).Where(m => m.Body.Length > 0 && !IsTakenInALine(m.What)))
            {
                using var answer = await Send(http, operation, operation.Filled(), [.. body, (byte)'\n', .. "{}"u8]);
                var lines = (await answer.Content.ReadAsStringAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => System.Text.Json.Nodes.JsonNode.Parse(l)!).ToArray();
                if (lines.Length != 3 || lines[0]?["error"] is null || (bool?)lines[2]?["complete"] != true || (int?)lines[2]?["errors"] != 2)
                    judged.Add($"{operation}, {what}: {lines.Length} {lines[0]?["error"] is null}");
            }
        }

        Assert.Empty(judged);
    }

    /// <summary>In a line what is empty counts as absent, ids are the sender's own and given back, and an uncertainty may be next to nothing.</summary>
    private static bool IsTakenInALine(string what) =>
        what.EndsWith("empty text", StringComparison.Ordinal) || what.EndsWith("NUL in text", StringComparison.Ordinal) || what.EndsWith("1e-40", StringComparison.Ordinal);

    [Fact]
    public async Task Every_operation_that_changes_something_asks_for_JSON_and_refuses_other_sites()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var before = await Everything(http);
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o.Method != "get"))
        {
            var body = "{}"u8.ToArray();
            await Expect(HttpStatusCode.UnsupportedMediaType, operation, http.Send(operation.Verb, operation.Filled(), null, null, Needed));
            await Expect(HttpStatusCode.UnsupportedMediaType, operation, http.Send(operation.Verb, operation.Filled(), body, "text/plain", Needed));
            await Expect(HttpStatusCode.UnsupportedMediaType, operation, http.Send(operation.Verb, operation.Filled(), body, operation.ContentType + "; charset=utf-16", Needed));
            await Expect(HttpStatusCode.Forbidden, operation, http.Send(operation.Verb, operation.Filled(), body, operation.ContentType, [.. Needed, ("Sec-Fetch-Site", "cross-site")]));
            await Expect(HttpStatusCode.Forbidden, operation, http.Send(operation.Verb, operation.Filled(), body, operation.ContentType, [.. Needed, ("Origin", "http://elsewhere.example")]));
            await Expect(HttpStatusCode.BadRequest, operation, http.Send(operation.Verb, operation.Filled(), body, operation.ContentType, ("Idempotency-Key", "two words"), ("If-Match", "*")), operation.Parameters.Any(p => (string)p["name"]! == "Idempotency-Key"));
            await Expect(HttpStatusCode.RequestEntityTooLarge, operation, http.Send(operation.Verb, operation.Filled() + (operation.TakesFile ? "?person=Ada" : ""), new byte[17 << 20], operation.ContentType, Needed), !operation.TakesLines);
        }

        Assert.Equal(before, await Everything(http));
    }

    [Fact]
    public async Task Every_operation_refuses_parameters_that_it_does_not_know_or_that_make_no_sense()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var operation in (await ApiDocument.Of(http)).Operations)
        {
            var body = operation.Method == "get" ? null : System.Text.Encoding.UTF8.GetBytes(operation.Example ?? "{}");
            foreach (var query in BadQueries(operation))
                await Expect(HttpStatusCode.BadRequest, operation, Send(http, operation, operation.Filled() + "?" + query, body));
        }
    }

    [Fact]
    public async Task Every_operation_answers_a_name_that_nobody_has_or_a_path_trick_with_a_problem()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o.Path.Contains('{', StringComparison.Ordinal)))
        {
            foreach (var trick in new[] { "nobody", "..%2f..%2f..%2fetc%2fpasswd", "%2e%2e", "a%20b", "%ff", new string('x', 3000), "%F0%9F%94%A7", "CON", "'%3B--" })
            {
                var path = System.Text.RegularExpressions.Regex.Replace(operation.Path, @"\{\w+\}", trick);
                using var answer = await Send(http, operation, path, System.Text.Encoding.UTF8.GetBytes(operation.Example ?? "{}"));
                Assert.True((int)answer.StatusCode is >= 400 and < 500, $"{operation}, {trick}: {answer.StatusCode}");
                await answer.Problem();
            }
        }
    }

    [Fact]
    public async Task Every_operation_answers_only_to_the_hosts_it_was_told()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var operation in (await ApiDocument.Of(http)).Operations)
        {
            foreach (var host in new[] { "elsewhere.example", "localhost.elsewhere.example", "127.0.0.2" })
            {
                using var answer = await http.Send(operation.Verb, operation.Filled(), operation.Example, [.. Needed, ("Host", host)]);
                Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
                Assert.Equal("host-not-allowed", (string)(await answer.Problem())["code"]!);
            }
        }
    }

    [Fact]
    public async Task Every_address_names_the_methods_it_takes_when_another_is_used()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var operations = (await ApiDocument.Of(http)).Operations.ToArray();
        foreach (var operation in operations)
        {
            var taken = operations.Where(o => o.Path == operation.Path).Select(o => o.Verb);
            using var answer = await http.Send(new[] { HttpMethod.Delete, HttpMethod.Put, HttpMethod.Patch }.Except(taken).First(), operation.Filled(), "{}");
            Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
            Assert.Equal("method-not-allowed", (string)(await answer.Problem())["code"]!);
            Assert.NotEmpty(answer.Content.Headers.Allow);
        }
    }

    private static (string, string)[] Needed => [("Idempotency-Key", "k"), ("If-Match", "*")];

    private static Task<HttpResponseMessage> Send(HttpClient http, Operation operation, string path, byte[]? body) =>
        operation.Method == "get" ? http.GetAsync(path) : http.Send(operation.Verb, path, body, operation.ContentType, Needed);

    private static async Task Expect(HttpStatusCode status, Operation operation, Task<HttpResponseMessage> sent, bool applies = true)
    {
        using var answer = await sent;
        if (!applies)
            return;
        Assert.True(status == answer.StatusCode, $"{operation}: {answer.StatusCode} instead of {status}, {await answer.Content.ReadAsStringAsync()}");
        await answer.Problem();
    }

    private static IEnumerable<string> BadQueries(Operation operation)
    {
        yield return "unkonwn=1";
        foreach (var name in operation.Parameters.Where(p => (string)p["in"]! == "query").Select(p => (string)p["name"]!))
        {
            if (name is "limit")
            {
                foreach (var wrong in new[] { "0", "-1", "1.5", "ten", "99999999999" })
                    yield return "limit=" + wrong;
            }

            if (name is "units" or "sep")
                yield return name + "=furlong";
            if (name is "dryRun" or "bom")
                yield return name + "=maybe";
            if (name is "cursor")
            {
                yield return "cursor=%00";
                yield return "cursor=not-a-cursor!";
            }

            yield return $"{name}=a&{name}=b";
        }
    }

    /// <summary>All that is stored, as the service shows it.</summary>
    private static async Task<string> Everything(HttpClient http)
    {
        var lists = new[] { "/v1/units", "/v1/instruments", "/v1/units/u1/components", "/v1/units/u1/measurements", "/v1/units/u1/findings", "/v1/units/u1/trials", "/v1/units/u1/decisions",
            "/v1/instruments/mic-25/calibrations", "/v1/instruments/mic-25/studies", "/v1/policy/editions", "/v1/parts", "/v1/stock",
            "/v1/feeds/invoice-lines", "/v1/units/u1/plans", "/v1/units/u1/quote/approvals", "/v1/units/u1/reservations", "/v1/units/u1/machining", "/v1/units/u1/work",
            "/v1/units/u1/sign-offs", "/v1/units/u1/attachments", "/v1/labels", "/v1/webhooks" };
        var texts = await Task.WhenAll(lists.Select(l => http.GetStringAsync(l + ".ndjson")));
        return string.Join('\n', texts);
    }
}
