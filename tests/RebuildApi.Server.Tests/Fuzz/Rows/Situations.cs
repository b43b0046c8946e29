using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Fuzz.Rows;

/// <summary>Brings the played shop into the states in which the rows of each kind are answered as they say.</summary>
internal sealed class Situations(ShopServer server, HttpClient http, AnswerWalk walk, PlayedShop shop)
{
    public async Task All()
    {
        await walk.Rows(http, shop, CalculationRows.Senseless);
        await walk.Rows(http, shop, RecordRows.All);
        await walk.Rows(http, shop, RecordRows.PlugIn(await Field("/v1/plugins/" + ShopServer.Family, "sha256")));
        await walk.Rows(http, shop, MoneyRows.All);
        await walk.Rows(http, shop, MoneyRows.Longer(await Kept()));
        await walk.Rows(http, shop, StatisticsRows.Of(await Bored()));
        await walk.Rows(http, shop, FileRows.All);
        await Deliver();
    }

    private async Task<string> Kept() => (string)(await Items($"/v1/units/{PlayedShop.Unit}/reservations")).Single(r => (string)r!["stock"]! == "d-2")!["id"]!;

    // A unit that was handed over, and whose third gear was read at one bench on three days.
    private async Task<string> Bored()
    {
        await http.Make("/v1/units", """{ "id": "bored", "tag": "B-1", "family": "brackenmere-4", "person": "Ada" }""");
        var made = await http.Bore("bored", "1.8780");
        foreach (var day in new[] { 3, 4, 5 })
            await http.Bore("bored", "1.8781", time: $"2026-03-0{day}T12:00:00Z");
        await http.Make("/v1/units/bored/causes", """{ "causes": ["third-flanks-leaned"], "reason": "Flanks leaned.", "person": "Ada", "bench": "bench-1" }""");
        await server.PutAt("bored", "handed-over");
        return (string)made["stored"]![0]!["component"]!;
    }

    // A receiver that is told of a unit that comes in, and at whose address nobody listens.
    private async Task Deliver()
    {
        await http.Make("/v1/webhooks", """{ "id": "w-d", "name": "Nobody", "address": "http://127.0.0.1:9/", "kinds": ["unit"], "person": "Ada" }""");
        await http.Make("/v1/units", """{ "id": "told", "tag": "W-1", "family": "brackenmere-4", "person": "Ada" }""");
        string? delivery = null;
        for (var tries = 0; tries < 600 && delivery is null; tries++, await Task.Delay(50))
            delivery = (string?)(await Items("/v1/webhooks/w-d/deliveries")).FirstOrDefault()?["id"];
        await walk.Rows(http, shop, WebhookRows.Of("w-d", delivery!));
        await Rest("w-d", delivery!);
    }

    // What the service tries by itself meanwhile counts too, so after how many it is left alone is not known.
    private async Task Rest(string receiver, string delivery)
    {
        for (var tries = 0; tries < 10; tries++)
        {
            using var answer = await http.Send(HttpMethod.Post, $"/v1/webhooks/{receiver}/deliveries/{delivery}/redeliveries", "{}");
            if (!answer.IsSuccessStatusCode)
                break;
        }

        await walk.Rows(http, shop, WebhookRows.Again(receiver, delivery, 409));
    }

    private async Task<string> Field(string address, string name) => (string)(await http.Read(address))[name]!;

    private async Task<JsonArray> Items(string address) => (await http.Read(address))["items"]!.AsArray();
}
