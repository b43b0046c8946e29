using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

public sealed class WorkTests
{
    private const string Ring = """
        { "id": "ring-093", "family": "brackenmere-4", "kind": "snap-ring-3-4", "member": "093", "origin": "new", "count": 2, "price": { "minor": 650, "currency": "EUR" }, "person": "Ada" }
        """;

    [Fact]
    public async Task What_is_kept_for_one_unit_is_not_free_for_another()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units", $$"""{ "id": "u2", "tag": "T-2", "family": "{{ShopServer.Family}}", "person": "Ada" }""");
        await http.Make("/v1/stock", Ring);
        var kept = await http.Make("/v1/units/u1/reservations", """{ "person": "Ada", "items": [{ "stock": "ring-093", "count": 2 }] }""");
        using var other = await http.Send(HttpMethod.Post, "/v1/units/u2/reservations", """{ "person": "Tove", "items": [{ "stock": "ring-093" }] }""");
        Assert.Equal("stock-short", (string)(await other.Problem())["code"]!);
        Assert.Equal(0, (int)(await http.Read("/v1/stock/ring-093"))["free"]!);
        var id = (string)kept["items"]![0]!["id"]!;
        using var released = await http.Send(HttpMethod.Patch, "/v1/units/u1/reservations/" + id, """{ "released": true }""", ("If-Match", "\"v-1\""));
        Assert.True(released.IsSuccessStatusCode);
        Assert.Equal(2, (int)(await http.Read("/v1/stock/ring-093"))["free"]!);
    }

    [Fact]
    public async Task Asking_twice_for_the_same_thing_keeps_it_once()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/stock", Ring);
        await http.Make("/v1/units/u1/reservations", """{ "person": "Ada", "items": [{ "stock": "ring-093" }] }""");
        await http.Make("/v1/units/u1/reservations", """{ "person": "Tove", "items": [{ "stock": "ring-093" }] }""");
        Assert.Single((await http.Read("/v1/units/u1/reservations"))["items"]!.AsArray());
        Assert.Equal(1, (int)(await http.Read("/v1/stock/ring-093"))["free"]!);
    }

    [Fact]
    public async Task Minutes_done_stand_beside_minutes_quoted()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/work", """{ "operation": "assemble", "minutes": 255, "person": "Ada", "bench": "b" }""");
        await http.Make("/v1/units/u1/work", """{ "operation": "assemble", "minutes": -15, "person": "Ada", "bench": "b" }""");
        var compared = (await http.Read("/v1/units/u1/work"))["compared"]!.AsArray().Single()!;
        Assert.Equal((0m, 240m), ((decimal)compared["quoted"]!, (decimal)compared["done"]!));
    }

    [Fact]
    public async Task A_part_that_is_back_from_machining_is_read_again_before_it_goes_on()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/components", """{ "id": "c1", "position": "hub-3-4" }""");
        var job = await http.Make("/v1/units/u1/machining", """
            { "position": "hub-3-4", "operation": "face-hub-3-4-rear", "instruction": "Face the rear", "at": "Quay Street Machining (invented)", "due": "2020-01-02", "person": "Ada",
              "price": { "minor": 3500, "currency": "EUR" } }
            """);
        using var back = await http.Send(HttpMethod.Patch, $"/v1/units/u1/machining/{(string)job["id"]!}", """{ "back": "2999-01-01T00:00:00Z" }""", ("If-Match", "\"m-1\""));
        Assert.True(back.IsSuccessStatusCode, await back.Content.ReadAsStringAsync());
        var shown = (await http.Read("/v1/units/u1/machining"))["items"]![0]!;
        Assert.True((bool)job["overdue"]!);
        Assert.False((bool)shown["overdue"]!);
        Assert.Equal(["hub-3-4/width", "hub-3-4/width-spread"], shown["toRemeasure"]!.AsArray().Select(t => (string)t!));
        var quote = await http.Make("/v1/units/u1/quote", """{ "person": "Ada", "extras": [{ "id": "x", "text": "x", "price": { "minor": 100, "currency": "EUR" } }] }""");
        Assert.Contains(quote["lines"]!.AsArray(), l => (string)l!["sort"]! == "machining");
    }
}
