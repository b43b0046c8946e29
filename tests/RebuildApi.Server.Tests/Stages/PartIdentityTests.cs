using System.Net;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.Server.Tests.Shop;

namespace RebuildApi.Server.Tests.Stages;

public sealed class PartIdentityTests
{
    [Fact]
    public async Task A_part_goes_from_unit_to_shelf_to_unit_and_is_in_one_place_at_a_time()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        await http.Make("/v1/units/u1/components", """{ "position": "third-gear", "id": "gear-7" }""");
        const string stock = """{ "id": "gear-7", "family": "brackenmere-4", "kind": "third-gear", "origin": "core", "core": "u1", "count": 1, "price": { "minor": 9000, "currency": "EUR" }, "person": "Ada" }""";
        using var inTwo = await http.Send(HttpMethod.Post, "/v1/units/u2/components", """{ "position": "third-gear", "id": "gear-7", "role": "fitted" }""");
        using var still = await http.Send(HttpMethod.Post, "/v1/stock", stock);
        Assert.Equal(["part-elsewhere", "invalid-content"], new[] { (string)(await inTwo.Problem())["code"]!, (string)(await still.Problem())["code"]! });

        await http.Make("/v1/units/u1/components/gear-7/removals", """{ "to": "shelf", "reason": "Another goes in.", "person": "Ada" }""");
        await http.Make("/v1/stock", stock);
        var shelved = await http.Read("/v1/components/gear-7");
        Assert.Equal((null, "gear-7"), ((string?)shelved["unit"], (string?)shelved["shelf"]));

        await http.Make("/v1/units/u2/components", """{ "position": "third-gear", "id": "gear-7", "role": "fitted" }""");
        var fitted = await http.Read("/v1/components/gear-7");
        Assert.Equal(("u2", null), ((string?)fitted["unit"], (string?)fitted["shelf"]));
        Assert.Equal(0, (int)(await http.Read("/v1/stock/gear-7"))["count"]!);
        Assert.Equal([("u1", "found", true), ("u2", "fitted", false)],
            fitted["places"]!.AsArray().Select(p => ((string)p!["unit"]!, (string)p["role"]!, p["until"] is not null)));
        Assert.Equal("shelf", (string)Assert.Single(fitted["removals"]!.AsArray())!["to"]!);
        using var back = await http.Send(HttpMethod.Patch, "/v1/stock/gear-7", """{ "count": 1 }""", ("If-Match", "*"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, back.StatusCode);
    }

    [Fact]
    public async Task A_part_is_not_in_two_places_of_one_unit_either()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/components", """{ "position": "keys-3-4", "id": "key" }""");
        using var twice = await http.Send(HttpMethod.Post, "/v1/units/u1/components", """{ "position": "keys-3-4#2", "id": "key" }""");
        Assert.Equal("part-elsewhere", (string)(await twice.Problem())["code"]!);
        await http.Make("/v1/units/u1/components", """{ "position": "keys-3-4#2", "id": "key", "role": "fitted" }""");
        Assert.Equal(2, (await http.Read("/v1/components/key"))["places"]!.AsArray().Count);
    }
}
