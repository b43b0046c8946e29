using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Calculations;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.History;

public sealed class HistoryTests
{
    [Fact]
    public async Task Recall_names_each_reading_of_the_instrument_and_the_verdict_that_falls_with_it()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8780");
        var recall = await http.Read("/v1/instruments/mic-25/recall?since=2026-03-01");
        Assert.Equal(1, (int)recall["readings"]!);
        var change = Assert.Single(recall["units"]![0]!["changes"]!.AsArray())!;
        Assert.Equal("third-gear/bore", (string)change["subject"]!);
        Assert.Equal("not-assessed", (string)change["without"]!);
        Assert.Empty((await http.Read("/v1/instruments/mic-25/recall?since=2026-03-03"))["units"]!.AsArray());
    }

    [Fact]
    public async Task Recall_wants_a_moment_and_an_instrument_that_is_registered()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        Assert.Equal("not-computable", (string)(await (await http.GetAsync("/v1/instruments/mic-25/recall")).Problem())["code"]!);
        Assert.Equal("invalid-query", (string)(await (await http.GetAsync("/v1/instruments/mic-25/recall?since=yesterday")).Problem())["code"]!);
        Assert.Equal("no-such-instrument", (string)(await (await http.GetAsync("/v1/instruments/mic-99/recall?since=2026-03-01")).Problem())["code"]!);
    }

    [Fact]
    public async Task A_bench_that_drifts_on_the_shared_part_raises_the_alarm_and_says_by_how_much()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var made = await http.Bore("u1", "1.8780");
        var part = (string)made["stored"]![0]!["component"]!;
        var day = 3;
        foreach (var value in new[] { "1.8781", "1.8780", "1.8781", "1.8786", "1.8787", "1.8786", "1.8787", "1.8787" })
            await http.Bore("u1", value, time: $"2026-03-{day++:00}T12:00:00Z");
        var bias = await http.Read($"/v1/stations/bench-1/bias?part={part}&characteristic=bore&reference=1.8780in&units=in");
        Assert.Equal(9, bias["points"]!.AsArray().Count);
        Assert.True((bool)bias["alarm"]!);
        Assert.Equal(0.0007, bias.At("points.8.error.value"), 1e-9);
        Assert.Equal(9, (await http.Read("/v1/stations")).At("items.0.measurements"));
    }

    [Fact]
    public async Task A_bench_that_nobody_read_at_is_not_found_and_one_reading_says_nothing_of_a_drift()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var part = (string)(await http.Bore("u1", "1.8780"))["stored"]![0]!["component"]!;
        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync("/v1/stations/bench-9/bias?part=x&characteristic=bore")).StatusCode);
        Assert.Equal("not-computable", (string)(await (await http.GetAsync($"/v1/stations/bench-1/bias?part={part}&characteristic=bore&reference=1.8780in")).Problem())["code"]!);
    }

    [Fact]
    public async Task Wear_and_the_chart_count_what_was_found_in_units_of_the_family()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var kind = (string)(await http.Bore("u1", "1.8780"))["found"]![0]!["kind"]!;
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        await http.Bore("u2", "1.8790");
        var which = $"family={ShopServer.Family}&kind={kind}&characteristic=bore&units=in";
        var wear = await http.Read("/v1/statistics/wear?" + which);
        Assert.Equal(2, (int)wear["count"]!);
        Assert.Equal(1.8785, wear.At("mean.value"), 1e-9);
        Assert.Equal(1, wear.At("beyondLimit.hits"));
        Assert.Equal(2, (await http.Read("/v1/statistics/control-chart?" + which))["units"]!.AsArray().Count);
    }

    [Fact]
    public async Task Wear_of_a_kind_that_is_not_there_is_refused_with_the_list()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var problem = await (await http.GetAsync($"/v1/statistics/wear?family={ShopServer.Family}&kind=nothing&characteristic=bore")).Problem();
        Assert.Equal("query/kind", (string)problem["errors"]![0]!["pointer"]!);
        Assert.NotEmpty(problem["errors"]![0]!["allowed"]!.AsArray());
    }

    // Clopper and Pearson's interval in closed form: none of 10 has an upper end of 1 − 0.025^(1/10); computed here.
    [Fact]
    public async Task No_comeback_in_ten_does_not_mean_a_rate_of_nothing()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var rate = await http.Read("/v1/statistics/comeback-rate?comebacks=0&of=10");
        Assert.Equal(0, rate.At("share"));
        Assert.Equal(1 - Math.Pow(0.025, 0.1), rate.At("high"), 1e-8);
        Assert.Equal(HttpStatusCode.BadRequest, (await http.GetAsync("/v1/statistics/comeback-rate?comebacks=11&of=10")).StatusCode);
    }
}
