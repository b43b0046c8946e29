using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

public sealed class AnswerTests
{
    [Fact]
    public async Task Nothing_read_and_nothing_seen_is_never_good()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var answers in new[] { "verdicts", "clearances", "pairings", "neighbourhoods" })
        {
            var page = await http.Read($"/v1/units/u1/{answers}?limit=500");
            Assert.NotEmpty(page["items"]!.AsArray());
            Assert.All(page["items"]!.AsArray(), i => Assert.False((string)i!["outcome"]! is "conforming" or "compatible", i.ToJsonString()));
            Assert.NotEmpty(page["cautions"]!.AsArray());
            Assert.Equal(64, ((string)page["inputsSha256"]!).Length);
            Assert.Equal(64, ((string)page["rules"]!["declarationSha256"]!).Length);
        }
    }

    [Fact]
    public async Task A_decision_stands_beside_the_verdict_and_never_turns_it()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", """
            { "person": "Ada", "bench": "b", "findings": [{ "position": "third-gear", "damage": { "class": "macropitting", "extent": "severe" } }] }
            """);
        var before = await Part(http, "third-gear");
        await http.Make("/v1/units/u1/decisions", """
            { "subject": "third-gear", "choice": "accept", "reason": "The owner knows and wants it back.", "person": "Ada", "bench": "b" }
            """);
        var after = await Part(http, "third-gear");
        Assert.Equal("nonconforming", (string)before["outcome"]!);
        Assert.Equal("nonconforming", (string)after["outcome"]!);
        Assert.Equal(("accept", "nonconforming", true), ((string)after["decision"]!["choice"]!, (string)after["decision"]!["verdictOutcome"]!, (bool)after["decision"]!["sameInputs"]!));
    }

    [Fact]
    public async Task A_decision_about_nothing_is_refused_with_the_subjects_there_are()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/decisions",
            """{ "subject": "thrid-gear", "choice": "reuse", "reason": "r", "person": "Ada", "bench": "b" }""");
        var error = (await answer.Problem())["errors"]![0]!;
        Assert.Equal(("unknown-subject", "Did you mean third-gear?"), ((string)error["code"]!, (string)error["fix"]!));
    }

    [Fact]
    public async Task An_inch_and_millimetre_slip_is_stored_as_sent_and_doubted()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var answer = await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "id": "m1", "at": "third-gear/length", "readings": [{ "value": 38.36, "unit": "in" }] }] }
            """);
        Assert.Equal("plausible-in-another-unit", (string)answer["doubts"]![0]!["code"]!);
        Assert.Equal("third-gear", (string)answer["found"]![0]!["placements"]![0]!["position"]!);
        Assert.Equal("in", (string)(await http.Read("/v1/units/u1/measurements"))["items"]![0]!["readings"]![0]!["value"]!["unit"]!);
    }

    [Fact]
    public async Task A_correction_supersedes_and_the_first_stays_out_of_the_answer()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "id": "m1", "at": "third-gear/length", "readings": [{ "value": 38.36, "unit": "in" }] }] }
            """);
        await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "id": "m2", "at": "third-gear/length", "readings": [{ "value": 38.36, "unit": "mm" }], "supersedes": "m1" }] }
            """);
        using var again = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "id": "m3", "at": "third-gear/length", "readings": [{ "value": 38.37, "unit": "mm" }], "supersedes": "m1" }] }
            """, ("Idempotency-Key", "third"));
        Assert.Equal(["m2"], (await http.Read("/v1/units/u1/measurements"))["items"]!.AsArray().Select(m => (string)m!["id"]!));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
    }

    [Fact]
    public async Task A_unit_whose_rules_are_gone_keeps_its_records_and_is_judged_not_assessed()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/findings", """{ "person": "Ada", "bench": "b", "findings": [{ "position": "third-gear", "sound": true }] }""");
        server.LosePlugins();
        foreach (var answers in new[] { "verdicts", "clearances", "pairings", "neighbourhoods" })
        {
            var only = (await http.Read($"/v1/units/u1/{answers}"))["items"]!.AsArray().Single()!;
            Assert.Equal("not-assessed", (string)only["outcome"]!);
        }

        Assert.Single((await http.Read("/v1/units/u1/findings"))["items"]!.AsArray());
        using var refused = await http.Send(HttpMethod.Post, "/v1/units/u1/findings", """{ "person": "Ada", "bench": "b", "findings": [{ "position": "third-gear", "sound": true }] }""");
        Assert.Equal("rules-unavailable", (string)(await refused.Problem())["code"]!);
    }

    [Fact]
    public async Task Every_example_that_stores_nothing_is_answered()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        foreach (var operation in (await ApiDocument.Of(http)).Operations.Where(o => o is { Method: "post", TakesBody: true } && !o.Parameters.Any(p => (string)p["name"]! == "dryRun")))
        {
            using var answer = await http.Send(operation.Verb, operation.Filled(), System.Text.Encoding.UTF8.GetBytes(operation.Example!), operation.ContentType);
            Assert.True(answer.IsSuccessStatusCode, $"{operation}: {await answer.Content.ReadAsStringAsync()}");
        }
    }

    private static async Task<JsonNode> Part(HttpClient http, string subject) =>
        (await http.Read("/v1/units/u1/verdicts?limit=500"))["items"]!.AsArray().Single(p => (string)p!["subject"]! == subject)!;
}
