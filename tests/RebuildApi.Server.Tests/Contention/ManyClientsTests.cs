using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Tests.Stages;

namespace RebuildApi.Server.Tests.Contention;

/// <summary>Many clients at once: somebody wins, everybody else hears how it stands, and nothing is lost or done twice.</summary>
public sealed class ManyClientsTests
{
    [Fact]
    public async Task Of_32_clients_that_saw_one_version_exactly_one_wins_each_round_and_the_others_get_what_stands()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var tag = "\"u-1\"";
        for (var round = 1; round <= 8; round++)
        {
            var answers = await Task.WhenAll(Enumerable.Range(0, 32).Select(i => http.Send(
                HttpMethod.Patch, "/v1/units/u1", $$"""{ "customer": "client {{i}} in round {{round}}" }""", ("If-Match", tag))));
            var won = Assert.Single(answers, a => a.StatusCode == HttpStatusCode.OK);
            var unit = JsonNode.Parse(await won.Content.ReadAsStringAsync())!;
            foreach (var lost in answers.Where(a => a != won))
            {
                var problem = await lost.Problem();
                Assert.Equal((HttpStatusCode.PreconditionFailed, "version-conflict"), (lost.StatusCode, (string)problem["code"]!));
                Assert.True(JsonNode.DeepEquals(unit, problem["current"]));
                Assert.Equal(won.Headers.ETag, lost.Headers.ETag);
            }

            tag = won.Headers.ETag!.ToString();
            Assert.Equal(round + 1, (long)unit["version"]!);
        }

        Assert.Equal(9, (await Events(http)).Count(e => (string)e["kind"]! == "unit"));
    }

    [Fact]
    public async Task Of_16_clients_that_read_change_and_try_again_none_loses_what_it_wrote()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Task.Run(async () =>
        {
            for (var n = 0; n < 4; n++)
                await Append(http, string.Create(CultureInfo.InvariantCulture, $"[{i}.{n}]"));
        })));
        var words = (string)(await http.Read("/v1/units/u1"))["words"]!;
        Assert.Equal(
            Enumerable.Range(0, 64).Select(k => string.Create(CultureInfo.InvariantCulture, $"[{k / 4}.{k % 4}]")).Order(StringComparer.Ordinal),
            words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
        Assert.Equal(65, (long)(await http.Read("/v1/units/u1"))["version"]!);
    }

    [Fact]
    public async Task A_key_that_32_clients_send_at_once_has_one_effect_and_equal_answers()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        const string reading = """{ "person": "Ada", "bench": "b", "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1.2045, "unit": "in" }] }] }""";
        var answers = await Task.WhenAll(Enumerable.Range(0, 32).Select(_ => http.Send(HttpMethod.Post, "/v1/units/u1/measurements", reading, ("Idempotency-Key", "once"))));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Created, a.StatusCode));
        var bodies = await Task.WhenAll(answers.Select(a => a.Content.ReadAsStringAsync()));
        Assert.Single(bodies.Distinct());
        Assert.Single(answers.Select(a => a.Headers.ETag!.ToString()).Distinct());
        Assert.Equal(31, answers.Count(a => a.Headers.Contains("Idempotency-Replayed")));
        Assert.Single((await http.Read("/v1/units/u1/measurements"))["items"]!.AsArray());
        Assert.Single(await Events(http), e => (string)e["kind"]! == "measurement");
    }

    [Fact]
    public async Task Readings_from_16_benches_at_one_unit_never_conflict_and_are_all_there()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var sent = await Task.WhenAll(Enumerable.Range(0, 16).Select(bench => Task.Run(async () =>
        {
            var ids = new List<string>();
            for (var n = 0; n < 12; n++)
            {
                var id = string.Create(CultureInfo.InvariantCulture, $"m-{bench}-{n}");
                await http.Make("/v1/units/u1/measurements", $$"""
                    { "person": "Ada", "bench": "bench-{{bench}}", "measurements": [{ "id": "{{id}}", "at": "third-gear/length", "readings": [{ "value": 1.2045, "unit": "in" }] }] }
                    """);
                ids.Add(id);
            }

            return ids;
        })));
        var stored = (await http.Read("/v1/units/u1/measurements?limit=500"))["items"]!.AsArray();
        Assert.Equal(sent.SelectMany(s => s).Order(StringComparer.Ordinal), stored.Select(m => (string)m!["id"]!).Order(StringComparer.Ordinal));
        // The first reading found the part; all the others are of that one.
        Assert.Single(stored.Select(m => (string)m!["component"]!).Distinct());
    }

    [Fact]
    public async Task Of_8_benches_that_pass_one_gate_at_once_one_does()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ =>
            http.Go("u1", "pre-strip", """, "notAvailable": [{ "requirement": "complaint", "reason": "None." }]""")));
        Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Created);
        foreach (var late in answers.Where(a => a.StatusCode != HttpStatusCode.Created))
            Assert.Equal("stage-conflict", (string)(await late.Problem())["code"]!);
        Assert.Single((await http.Read("/v1/units/u1/stages"))["passings"]!.AsArray());
    }

    private static async Task Append(HttpClient http, string mark)
    {
        while (true)
        {
            using var seen = await http.GetAsync(new Uri("/v1/units/u1", UriKind.Relative));
            var words = (string?)JsonNode.Parse(await seen.Content.ReadAsStringAsync())!["words"];
            using var answer = await http.Send(HttpMethod.Patch, "/v1/units/u1", $$"""{ "words": "{{words}} {{mark}}" }""", ("If-Match", seen.Headers.ETag!.ToString()));
            if (answer.StatusCode == HttpStatusCode.OK)
                return;
            Assert.Equal(HttpStatusCode.PreconditionFailed, answer.StatusCode);
        }
    }

    private static async Task<JsonNode[]> Events(HttpClient http) =>
        [.. (await http.GetStringAsync("/v1/events?after=0&seconds=0&unit=u1")).Split('\n').Where(l => l.StartsWith("data: ", StringComparison.Ordinal)).Select(l => JsonNode.Parse(l[6..])!)];
}
