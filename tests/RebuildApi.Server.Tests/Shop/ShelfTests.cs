using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

public sealed class ShelfTests
{
    private const string Gear = """
        { "id": "shelf-1", "family": "brackenmere-4", "kind": "third-gear", "count": 1, "price": { "minor": 4500, "currency": "EUR" }, "person": "Ada", "origin": "core",
          "inspected": true, "attributes": { "hand": "left" },
          "readings": [{ "characteristic": "length", "readings": [{ "value": 1.5001, "unit": "in" }, { "value": 38.100, "unit": "mm" }], "instrument": "mic-25" }] }
        """;

    [Fact]
    public async Task A_measured_part_is_shown_as_it_was_read()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/stock", Gear);
        var item = await http.Read("/v1/stock/shelf-1");
        Assert.Equal("1.5001", item["readings"]![0]!["readings"]![0]!["value"]!["value"]!.ToJsonString());
        Assert.Equal((1, 0, 1), ((int)item["count"]!, (int)item["reserved"]!, (int)item["free"]!));
    }

    [Fact]
    public async Task The_exported_shelf_taken_over_again_changes_nothing_readings_and_all()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/stock", Gear);
        var table = await http.GetStringAsync("/v1/stock.csv");
        using var answer = await http.Table("/v1/stock/imports", table);
        var report = JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        Assert.True(answer.IsSuccessStatusCode, report.ToJsonString());
        Assert.Equal((1, 0, 1), ((int)report["rows"]!, (int)report["stored"]!, (int)report["unchanged"]!));
    }

    [Fact]
    public async Task Readings_are_of_one_part_and_of_what_its_kind_has()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Send(HttpMethod.Post, "/v1/stock", Gear
            .Replace("\"count\": 1", "\"count\": 2", StringComparison.Ordinal).Replace("\"length\"", "\"girth\"", StringComparison.Ordinal));
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!).Order(StringComparer.Ordinal);
        Assert.Equal(["/readings", "/readings/0/characteristic"], pointers);
    }

    [Fact]
    public async Task A_part_on_the_shelf_or_on_the_price_list_is_found_for_a_place()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/stock", Gear);
        await http.Make("/v1/parts", """
            { "id": "third-new", "family": "brackenmere-4", "kind": "third-gear", "name": "Third gear", "vendor": "Invented", "price": { "minor": 9900, "currency": "EUR" } }
            """);
        var found = (await http.Read("/v1/units/u1/positions/third-gear/candidates"))["items"]!.AsArray();
        Assert.Equal(["catalogue", "shelf"], found.Select(c => (string)c!["from"]!).Order(StringComparer.Ordinal));
    }
}
