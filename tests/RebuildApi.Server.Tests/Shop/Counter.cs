using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>A shop that has said how it charges, with a few invented parts.</summary>
internal static class Counter
{
    public const string Hub = """
        { "id": "hub-34", "family": "brackenmere-4", "kind": "hub-3-4", "name": "Third and fourth hub", "vendor": "Harbour Gear Supply (invented)",
          "price": { "minor": 11800, "currency": "EUR" }, "leadDays": 6, "attributes": { "vintage": "late" } }
        """;

    /// <summary>Euros, 20 % tax, 60.00 an hour, a tenth more without asking.</summary>
    public static async Task<HttpClient> WithRates(this ShopServer server)
    {
        var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Patch, "/v1/rates", """
            { "currency": "EUR", "taxes": [{ "id": "standard", "category": "S", "percent": 20 }], "labourTax": "standard", "partsTax": "standard",
              "labourPerHour": { "minor": 6000, "currency": "EUR" }, "comebackCost": { "minor": 45000, "currency": "EUR" }, "agreedSharePercent": 10 }
            """, ("If-Match", "\"r-0\""));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return http;
    }

    public static Task<HttpResponseMessage> Table(this HttpClient http, string path, string csv) =>
        http.Send(HttpMethod.Post, path, System.Text.Encoding.UTF8.GetBytes(csv), "text/csv");
}
