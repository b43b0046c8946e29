using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

public sealed class ComponentTests
{
    [Fact]
    public async Task A_part_is_not_found_in_two_gearboxes()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        await http.Make("/v1/units/u1/components", """{ "id": "p1", "position": "third-gear" }""");
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u2/components", """{ "id": "p1", "position": "third-gear" }""");
        Assert.Equal("part-elsewhere", (string)(await answer.Problem())["code"]!);
    }

    [Fact]
    public async Task A_part_does_not_go_where_another_kind_belongs()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/components", """{ "id": "p1", "position": "third-gear" }""");
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/components", """{ "id": "p1", "position": "sleeve-3-4" }""");
        Assert.Equal("unknown-kind", (string)(await answer.Problem())["errors"]![0]!["code"]!);
    }

    [Fact]
    public async Task Readings_of_a_part_stay_behind_when_it_is_reworked()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/components", """{ "id": "p1", "position": "third-gear" }""");
        await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "component": "p1", "characteristic": "length", "readings": [{ "value": 38.36, "unit": "mm" }] }] }
            """);
        await http.Make("/v1/units/u1/components/p1/revisions", """{ "label": "front face cut" }""");
        var part = (await http.Read("/v1/units/u1/components"))["items"]!.AsArray().Single()!;
        var missing = (await http.Read("/v1/units/u1/verdicts"))["missing"]!.AsArray();
        Assert.Equal(2, (int)part["revision"]!);
        Assert.Contains(missing, m => (string)m!["subject"]! == "third-gear" && (string)m["id"]! == "length");
    }

    [Fact]
    public async Task The_fourth_of_three_like_parts_is_refused()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/findings", """
            { "person": "Ada", "bench": "b", "findings": [{ "position": "keys-3-4#3", "sound": true }, { "position": "keys-3-4#4", "sound": true }, { "position": "keys-3-4#x", "sound": true }] }
            """);
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!);
        Assert.Equal(["/findings/1/position", "/findings/2/position"], pointers);
        Assert.Empty((await http.Read("/v1/units/u1/components"))["items"]!.AsArray());
    }

    [Fact]
    public async Task Parts_that_are_only_spoken_of_are_judged_without_storing_anything()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        var mixed = await http.Make("/v1/pairings", """
            { "family": "brackenmere-4", "parts": [
              { "position": "third-gear", "attributes": { "dog.form": "back-tapered", "dog.drive-flank": "sound", "dog.coast-flank": "sound", "dog.teeth": "n36" } },
              { "position": "sleeve-3-4", "attributes": { "form": "straight", "teeth": "n36" } }] }
            """);
        Assert.Contains(mixed["items"]!.AsArray(), p => (string)p!["outcome"]! == "incompatible");
        Assert.Empty((await http.Read("/v1/units"))["items"]!.AsArray());
    }
}
