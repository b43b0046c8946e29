using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Requests;

public sealed class WritingTests
{
    private const string Intake = """{ "tag": "T-2", "family": "brackenmere-4", "person": "Ada" }""";

    [Fact]
    public async Task A_repeated_key_gives_the_first_answer_again_and_does_nothing()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var first = await http.Send(HttpMethod.Post, "/v1/units", Intake, ("Idempotency-Key", "k1"));
        using var again = await http.Send(HttpMethod.Post, "/v1/units", Intake, ("Idempotency-Key", "k1"));
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        Assert.Equal((first.StatusCode, first.Headers.ETag, first.Headers.Location), (again.StatusCode, again.Headers.ETag, again.Headers.Location));
        Assert.Equal("true", again.Headers.GetValues("Idempotency-Replayed").Single());
        Assert.Single((await http.Read("/v1/units"))["items"]!.AsArray());
    }

    [Theory]
    [InlineData("PATCH", "/v1/units/u1", """{ "customer": "Ferry Lane Farm" }""", """{ "customer": "Gull Point Taxis" }""")]
    [InlineData("PUT", "/v1/policy", """{ "person": "Ada", "reason": "As agreed." }""", """{ "person": "Ada", "reason": "Another." }""")]
    [InlineData("DELETE", "/v1/webhooks/w1", "{}", "{ }")]
    public async Task A_change_a_replacement_and_a_removal_are_repeated_by_their_key_as_the_document_says(string method, string path, string body, string other)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var operation = (await ApiDocument.Of(http)).Operations.Single(o => o.Verb.Method == method && o.Filled() == path);
        var key = operation.Parameters.Single(p => (string)p["name"]! == "Idempotency-Key");
        Assert.Equal(("header", false), ((string)key["in"]!, (bool?)key["required"] ?? false));

        using var first = await http.Send(operation.Verb, path, body, ("Idempotency-Key", "k1"), ("If-Match", "*"));
        var recorded = await Entries(http);
        using var again = await http.Send(operation.Verb, path, body, ("Idempotency-Key", "k1"), ("If-Match", "*"));
        using var another = await http.Send(operation.Verb, path, other, ("Idempotency-Key", "k1"), ("If-Match", "*"));

        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        Assert.Equal((first.StatusCode, first.Headers.ETag, await first.Content.ReadAsStringAsync()), (again.StatusCode, again.Headers.ETag, await again.Content.ReadAsStringAsync()));
        Assert.Equal("true", again.Headers.GetValues("Idempotency-Replayed").Single());
        Assert.Equal("idempotency-key-reused", (string)(await another.Problem())["code"]!);
        Assert.Equal(recorded, await Entries(http));
    }

    [Fact]
    public async Task The_document_says_of_each_change_that_it_takes_a_key_and_of_no_question()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o.Method != "post"))
            Assert.True(Takes(operation, "Idempotency-Key") == (operation.Method != "get"), operation.ToString());
    }

    private static bool Takes(Operation operation, string parameter) => operation.Parameters.Any(p => (string)p["name"]! == parameter);

    private static async Task<long> Entries(HttpClient http) => (long)(await http.Read("/v1/audit/verification"))["entries"]!;

    [Fact]
    public async Task A_key_of_another_request_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var first = await http.Send(HttpMethod.Post, "/v1/units", Intake, ("Idempotency-Key", "k1"));
        using var other = await http.Send(HttpMethod.Post, "/v1/units", Intake.Replace("T-2", "T-3", StringComparison.Ordinal), ("Idempotency-Key", "k1"));
        Assert.Equal("idempotency-key-reused", (string)(await other.Problem())["code"]!);
    }

    [Fact]
    public async Task A_batch_of_readings_needs_a_key()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1, "unit": "in" }] }] }
            """);
        Assert.Equal("idempotency-key-missing", (string)(await answer.Problem())["code"]!);
    }

    [Theory]
    [InlineData("/v1/units?dryRun=true", null)]
    [InlineData("/v1/units", "dry-run")]
    public async Task A_dry_run_answers_as_if_and_keeps_nothing(string path, string? prefer)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var answer = await http.Send(HttpMethod.Post, path, Intake, prefer is null ? [] : [("Prefer", prefer)]);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        Assert.Contains("\"dryRun\":true", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("dry-run", answer.Headers.GetValues("Preference-Applied").Single());
        Assert.Empty((await http.Read("/v1/units"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_change_names_the_version_it_saw()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var seen = await http.GetAsync("/v1/units/u1");
        var tag = seen.Headers.ETag!.ToString();
        using var blind = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "customer": "First" }""");
        using var mine = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "customer": "First" }""", ("If-Match", tag));
        using var late = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "customer": "Late" }""", ("If-Match", tag));
        Assert.Equal("precondition-required", (string)(await blind.Problem())["code"]!);
        Assert.Equal(HttpStatusCode.OK, mine.StatusCode);
        var conflict = await late.Problem();
        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);
        Assert.Equal("First", (string)conflict["current"]!["customer"]!);
        Assert.Equal(mine.Headers.ETag, late.Headers.ETag);
    }

    [Fact]
    public async Task A_reader_that_has_the_present_version_is_told_so()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var path in new[] { "/v1/units/u1", "/v1/instruments/mic-25", "/v1/units/u1/verdicts", "/v1/families/brackenmere-4", "/v1/units/u1/measurements.csv" })
        {
            using var first = await http.GetAsync(path);
            using var again = await http.Send(HttpMethod.Get, path, null, ("If-None-Match", first.Headers.ETag!.ToString()));
            Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        }
    }

    [Fact]
    public async Task Null_takes_a_field_away_and_silence_keeps_it()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var named = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "customer": "Ferry Lane Farm", "words": "Whines." }""", ("If-Match", "*"));
        using var taken = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "customer": null }""", ("If-Match", "*"));
        var unit = await http.Read("/v1/units/u1");
        Assert.Null(unit["customer"]);
        Assert.Equal("Whines.", (string)unit["words"]!);
    }
}
