using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>Cures of a pairing by what the shop's price list asks for their parts; the vintages of third gear and what it runs with, invented.</summary>
public sealed class CureRankTests
{
    [Fact]
    public async Task The_cheaper_cure_comes_first_where_the_list_has_every_price_and_a_new_price_makes_a_new_answer()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        foreach (var (position, vintage) in new[] { ("third-gear", "late"), ("hub-3-4", "early"), ("sleeve-3-4", "early"), ("input-gear", "early") })
            await http.Make("/v1/units/u1/components", $$"""{ "position": "{{position}}", "attributes": { "vintage": "{{vintage}}" } }""");
        var (unpriced, before) = await First(http);
        await Prices(http, gear: 90_000, others: 1_000);
        var (dear, after) = await First(http);
        using var cheaper = await http.Send(HttpMethod.Patch, "/v1/parts/third-gear-early", """{ "price": { "minor": 500, "currency": "EUR" } }""", ("If-Match", "*"));
        Assert.True(cheaper.IsSuccessStatusCode);
        var (cheap, last) = await First(http);

        Assert.Equal(("third-gear", null), unpriced);
        Assert.Equal(("hub-3-4,input-gear,sleeve-3-4", 3_000), dear);
        Assert.Equal(("third-gear", 500), cheap);
        Assert.Equal(3, new[] { before, after, last }.Distinct().Count());
    }

    /// <summary>The first cure: what it exchanges, and its price; and the entity tag of the answer.</summary>
    private static async Task<((string Positions, int? Price) Cure, string Etag)> First(HttpClient http)
    {
        using var answer = await http.GetAsync("/v1/units/u1/pairings?limit=500");
        var page = System.Text.Json.Nodes.JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
        var cure = page["items"]!.AsArray().Single(i => (string)i!["pairing"]! == "vintage-3-4")!["cures"]![0]!;
        var positions = cure["steps"]!.AsArray().Select(s => (string)s!["position"]!).Distinct().Order(StringComparer.Ordinal);
        return ((string.Join(',', positions), (int?)cure["price"]?["minor"]), answer.Headers.ETag!.Tag);
    }

    private static async Task Prices(HttpClient http, int gear, int others)
    {
        foreach (var (kind, vintage, price) in new[] { ("third-gear", "early", gear), ("hub-3-4", "late", others), ("sleeve-3-4", "late", others), ("input-gear", "late", others) })
        {
            await http.Make("/v1/parts", $$"""
                { "id": "{{kind}}-{{vintage}}", "family": "brackenmere-4", "kind": "{{kind}}", "name": "{{kind}}", "vendor": "Invented",
                  "price": { "minor": {{price}}, "currency": "EUR" }, "attributes": { "vintage": "{{vintage}}" } }
                """);
        }
    }
}
