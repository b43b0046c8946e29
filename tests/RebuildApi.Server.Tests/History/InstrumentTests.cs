using System.Net;
using RebuildApi.Server.Tests.Calculations;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.History;

/// <summary>What is known of an instrument, and what it does to readings. Invented values; computed here, no source.</summary>
public sealed class InstrumentTests
{
    [Fact]
    public async Task A_reading_beyond_the_range_is_doubted_at_the_door_and_flagged_in_the_verdict()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        var made = await http.Bore("u1", "1.8780", instrument: "mic-25-range");
        Assert.All(made["doubts"]!.AsArray(), d => Assert.Equal("outside-instrument-range", (string)d!["code"]!));
        Assert.Equal(3, made["doubts"]!.AsArray().Count);
        Assert.Contains("reading-outside-range", (await http.Read("/v1/units/u1/verdicts")).ToJsonString(), StringComparison.Ordinal);
        var trial = await http.Make("/v1/units/u1/trials", """
            { "clearance": "third-end-play", "person": "Ada", "bench": "bench-1", "instrument": "mic-25-range", "pieces": [{ "member": "087" }], "readings": [{ "value": 30, "unit": "mm" }] }
            """);
        Assert.Equal("outside-instrument-range", (string)trial["doubts"]![0]!["code"]!);
    }

    [Fact]
    public async Task A_calibration_that_finds_an_error_beyond_the_limit_puts_the_readings_since_the_last_good_one_in_doubt()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        await Calibrate(http, "25.002", "2026-03-01T08:00:00Z");
        await http.Bore("u1", "1.8780", time: "2026-03-02T12:00:00Z");
        var wrong = await Calibrate(http, "25.009", "2026-03-03T08:00:00Z");
        Assert.False((bool)wrong["withinLimit"]!);
        Assert.Equal(0.009, wrong.At("largestError.value"), 1e-12);
        Assert.Contains("instrument-found-wrong", (await http.Read("/v1/units/u1/verdicts")).ToJsonString(), StringComparison.Ordinal);
        var recall = await http.Read((string)wrong["recall"]!);
        Assert.Equal("2026-03-01T08:00:00+00:00", (string)recall["since"]!);
        Assert.Equal(1, recall.At("readings"));
        Assert.Equal(1, recall.At("verdicts"));
        Assert.Equal([true, false], (await http.Read("/v1/instruments/mic-25/calibrations"))["items"]!.AsArray().Select(c => (bool)c!["withinLimit"]!));
        Assert.Equal("2026-03-03T08:00:00+00:00", (string)(await http.Read("/v1/instruments/mic-25"))["inDoubt"]![0]!["upTo"]!);
    }

    [Fact]
    public async Task A_recall_names_trial_assemblies_and_the_clearance_that_falls_with_them()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        await http.Make("/v1/units/u1/trials", """
            { "clearance": "third-end-play", "person": "Ada", "bench": "bench-1", "instrument": "mic-25", "pieces": [{ "member": "087" }],
              "readings": [{ "value": 0.015, "unit": "in" }, { "value": 0.015, "unit": "in" }, { "value": 0.015, "unit": "in" }] }
            """);
        var recall = await http.Read("/v1/instruments/mic-25/recall?since=2020-01-01");
        Assert.Single(recall["units"]![0]!["trials"]!.AsArray());
        Assert.Equal(1, recall.At("readings"));
        Assert.Empty((await http.Read("/v1/instruments/mic-25/recall?since=2020-01-01&until=2020-01-02"))["units"]!.AsArray());
    }

    [Fact]
    public async Task A_gauge_study_is_kept_with_its_readings_and_goes_into_the_budget_of_that_characteristic()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        var example = (await ApiDocument.Of(http)).Operations.Single(o => (string)o.Node["operationId"]! == "addStudy").Example!;
        var kept = await http.Make("/v1/instruments/mic-25/studies", example);
        await http.Bore("u1", "1.8780");
        var verdict = (await http.Read("/v1/units/u1/verdicts"))["items"]!.AsArray().SelectMany(p => p!["verdicts"]!.AsArray()).Single(v => (string)v!["subject"]! == "third-gear/bore")!;
        var repeatability = verdict["value"]!["budget"]!.AsArray().Single(l => (string)l!["name"]! == "repeatability")!;
        Assert.Equal(kept.At("found.repeatability.value"), (double)repeatability["standardUncertainty"]!["value"]!, 1e-12);
        Assert.Contains(verdict["value"]!["budget"]!.AsArray(), l => (string)l!["name"]! == "between-benches");
        var listed = await http.Read("/v1/instruments/mic-25/studies");
        Assert.Equal(8, listed["items"]![0]!["readings"]!.AsArray().Count);
        Assert.Equal(kept.At("study.gauge.value"), listed.At("items.0.study.gauge.value"), 1e-15);
        Assert.Equal("third-gear", (string)(await http.Read("/v1/instruments/mic-25"))["studied"]![0]!["kind"]!);
    }

    [Fact]
    public async Task A_study_with_a_reading_missing_or_of_what_the_family_does_not_have_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        var example = (await ApiDocument.Of(http)).Operations.Single(o => (string)o.Node["operationId"]! == "addStudy").Example!;
        Assert.Equal("not-computable", await CodeOf(http, example.Replace("\"appraiser\":\"Ben\",\"part\":\"2\"", "\"appraiser\":\"Ben\",\"part\":\"3\"", StringComparison.Ordinal)));
        Assert.Equal("invalid-content", await CodeOf(http, example.Replace("\"bore\"", "\"bire\"", StringComparison.Ordinal)));
        Assert.Empty((await http.Read("/v1/instruments/mic-25/studies"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_range_that_ends_below_where_it_begins_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        using var answer = await http.Send(HttpMethod.Patch, "/v1/instruments/mic-25",
            """{ "range": { "low": { "value": 25, "unit": "mm" }, "high": { "value": 0, "unit": "mm" } } }""", ("If-Match", "*"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("/range/high", (string)(await answer.Problem())["errors"]![0]!["pointer"]!);
    }

    private static async Task<string> CodeOf(HttpClient http, string body)
    {
        using var answer = await http.Send(HttpMethod.Post, "/v1/instruments/mic-25/studies", body);
        return (string)(await answer.Problem())["code"]!;
    }

    private static Task<System.Text.Json.Nodes.JsonObject> Calibrate(HttpClient http, string read, string time) => http.Make("/v1/instruments/mic-25/calibrations", $$"""
        { "person": "Ada", "time": "{{time}}", "points": [{ "nominal": { "value": 10, "unit": "mm" }, "read": { "value": 10.001, "unit": "mm" } },
          { "nominal": { "value": 25, "unit": "mm" }, "read": { "value": {{read}}, "unit": "mm" } }] }
        """);

    private static async Task<HttpClient> Shop(ShopServer server)
    {
        var http = await server.WithUnit();
        await http.Make("/v1/instruments", """
            { "id": "mic-25-range", "name": "Micrometer", "type": "outside-micrometer", "resolution": { "value": 0.0001, "unit": "in" },
              "range": { "low": { "value": 0, "unit": "in" }, "high": { "value": 1, "unit": "in" } } }
            """);
        return http;
    }
}
