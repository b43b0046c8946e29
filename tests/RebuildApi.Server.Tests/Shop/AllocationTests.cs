using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>
/// Three units that came in alike (the demo's, three times over) and one shelf: everything that their plans put in lies there three times, but of the third gear
/// there are measured used ones only. Counted here by hand and by trying everything, no source; all data invented.
/// </summary>
public sealed class AllocationTests
{
    private static readonly string[] s_gears = ["core-0912-third", "third-good"];

    private static readonly string[] s_units = ["sl-1047", "sl-1048", "sl-1049"];
    private static readonly DateTimeOffset s_start = new(2030, 3, 4, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task The_shelf_finishes_as_many_units_as_it_has_good_gears_for_and_says_what_the_others_lack()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        await Gear(http, "third-good", bore: 1.8780m);
        await Gear(http, "third-worn", bore: 1.8830m);

        var answer = await http.Make("/v1/allocations", "{}");

        Assert.True((bool)answer["proven"]!);
        Assert.True(answer["completed"]!.AsArray().Count == 2, answer.ToJsonString());
        Assert.Equal(["core-0912-third", "third-good"], Assigned(answer, "third-gear").Select(a => a.Stock).Order(StringComparer.Ordinal));
        Assert.All(answer["assigned"]!.AsArray().GroupBy(a => (string)a!["unit"]!), g => Assert.Equal(g.Count(), g.Select(a => (string)a!["position"]!).Distinct().Count()));
        var miss = answer["misses"]!.AsArray().Single()!;
        Assert.Equal("third-gear", (string)miss["lacking"]!.AsArray().Single()!);
        var near = miss["near"]!.AsArray().ToDictionary(n => (string)n!["stock"]!, n => (string)n!["text"]!);
        Assert.Contains("goes to", near["third-good"], StringComparison.Ordinal);
        Assert.DoesNotContain("goes to", near["third-worn"], StringComparison.Ordinal);
        var purchase = answer["purchases"]!.AsArray().Single()!;
        Assert.Equal(("third-gear", (string)miss["unit"]!), ((string)purchase["position"]!, (string)purchase["units"]!.AsArray().Single()!));
    }

    [Fact]
    public async Task What_is_kept_for_one_unit_goes_to_no_other_until_the_reservation_has_expired()
    {
        var clock = new FakeTimeProvider(s_start);
        await using var server = ShopServer.Open().At(clock);
        using var http = await Shop(server);
        await Gear(http, "third-good", bore: 1.8780m);
        await http.Make($"/v1/units/{s_units[2]}/reservations", """{ "person": "Ada", "items": [{ "stock": "core-0912-third" }], "hours": 2 }""");
        // Without the other good gear only the unit that the gear is kept for can be finished.
        const string asked = """{ "without": ["third-good"] }""";
        Assert.Equal(s_units[2], (string)(await http.Make("/v1/allocations", asked))["completed"]!.AsArray().Single()!);
        const string others = """{ "without": ["third-good"], "units": ["sl-1047", "sl-1048"] }""";
        Assert.Empty((await http.Make("/v1/allocations", others))["completed"]!.AsArray());
        clock.Advance(TimeSpan.FromHours(3));
        Assert.Single((await http.Make("/v1/allocations", others))["completed"]!.AsArray());
    }

    /// <summary>Every set of things left out of a few: as many units are finished as trying every way to hand the rest out finishes.</summary>
    [Fact]
    public async Task It_finishes_as_many_as_trying_everything_does()
    {
        await using var server = ShopServer.Open();
        using var http = await Shop(server);
        await Gear(http, "third-good", bore: 1.8780m);
        await Gear(http, "third-worn", bore: 1.8830m);
        // What is there three times can be short of nothing; hubs and sleeves are one set each, kept whole.
        string[] some = ["core-0912-third", "third-good", "third-worn", .. Sets(await http.Read("/v1/stock?limit=1000"))];
        var random = new Random(7);
        for (var turn = 0; turn < 12; turn++)
        {
            string[] without = [.. some.Where(_ => random.Next(3) == 0)];
            var answer = await http.Make("/v1/allocations", JsonSerializer.Serialize(new { without }));
            var gears = s_gears.Except(without).Count();
            var sets = some.Where(s => s.Contains("set", StringComparison.Ordinal)).GroupBy(s => s.Split('-')[^1]).Count(g => !g.Any(without.Contains));
            Assert.Equal(Math.Min(Math.Min(gears, sets), s_units.Length), answer["completed"]!.AsArray().Count);
            Assert.All(Assigned(answer, null).Where(a => a.Stock.Contains("set", StringComparison.Ordinal)).GroupBy(a => a.Unit), g => Assert.Single(g.Select(a => a.Stock.Split('-')[^1]).Distinct()));
        }
    }

    private static IEnumerable<(string Stock, string Unit)> Assigned(JsonObject answer, string? position) => answer["assigned"]!.AsArray()
        .Where(a => position is null || (string)a!["position"]! == position).Select(a => ((string)a!["stock"]!, (string)a!["unit"]!));

    private static IEnumerable<string> Sets(JsonObject stock) => stock["items"]!.AsArray().Where(s => s!["set"] is not null).Select(s => (string)s!["id"]!);

    private static async Task<HttpClient> Shop(ShopServer server)
    {
        var http = server.CreateClient();
        foreach (var unit in s_units)
        {
            var teardown = Teardown.Load();
            // The instruments are registered once; everything else is as the first unit's, under another name.
            var steps = unit == s_units[0] ? teardown.Steps : [.. teardown.Steps.Where(s => !s.Path.StartsWith("/v1/instruments", StringComparison.Ordinal)).Select(s => Of(s, unit))];
            Assert.True(await new TeardownPlayer(new Keyed(http, unit).Client, TextWriter.Null).Play(teardown with { Steps = steps }));
        }

        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
        JsonObject? plan = null;
        foreach (var unit in s_units)
        {
            plan = await http.Make($"/v1/units/{unit}/plans", """{ "person": "Wren" }""");
            await http.Make($"/v1/units/{unit}/plans/{(string)plan["id"]!}/approvals", """{ "person": "Wren" }""");
        }

        await Fill(http, plan!);
        return http;
    }

    /// <summary>Lays three of each part that the plan orders on the shelf, new; of a set, one of each part in three sets.</summary>
    private static async Task Fill(HttpClient http, JsonObject plan)
    {
        var parts = (await http.Read("/v1/parts?limit=1000"))["items"]!.AsArray().ToDictionary(p => (string)p!["id"]!, p => p!.AsObject());
        var needed = plan["lines"]!.AsArray().Where(l => ((string)l!["candidate"]!).StartsWith("order/", StringComparison.Ordinal))
            .GroupBy(l => ((string)l!["candidate"]!)["order/".Length..]).Select(g => (Part: parts[g.Key], Count: g.Count()));
        foreach (var (part, count) in needed)
        {
            var isOfSet = part["set"] is not null;
            for (var set = 1; set <= (isOfSet ? s_units.Length : 1); set++)
            {
                var item = new JsonObject
                {
                    ["id"] = isOfSet ? $"set-{(string)part["id"]!}-{set}" : "new-" + (string)part["id"]!,
                    ["family"] = "brackenmere-4",
                    ["kind"] = (string)part["kind"]!,
                    ["origin"] = "new",
                    ["count"] = isOfSet ? 1 : count * s_units.Length,
                    ["price"] = part["price"]!.DeepClone(),
                    ["attributes"] = part["attributes"]!.DeepClone(),
                    ["person"] = "Ada",
                };
                if (isOfSet)
                    item["set"] = $"{(string)part["set"]!}-{set}";
                await http.Make("/v1/stock", item.ToJsonString());
            }
        }
    }

    /// <summary>A used third gear like the one of the demo's shelf, looked at, with another bore.</summary>
    private static async Task Gear(HttpClient http, string id, decimal bore)
    {
        var gear = Teardown.Shop().Steps.SelectMany(s => s.Body.TryGetProperty("rows", out var rows) ? rows.EnumerateArray() : Enumerable.Empty<JsonElement>())
            .Single(r => r.GetProperty("id").GetString() == "core-0912-third");
        var item = JsonNode.Parse(gear.GetRawText())!.AsObject();
        item["id"] = id;
        item["inspected"] = true;
        var readings = item["readings"]!.AsArray().Single(r => (string)r!["characteristic"]! == "bore")!["readings"]!.AsArray();
        foreach (var reading in readings)
            reading!["value"] = bore;
        await http.Make("/v1/stock", item.ToJsonString());
    }

    private static TeardownStep Of(TeardownStep step, string unit)
    {
        string Renamed(string text) => text.Replace(s_units[0], unit, StringComparison.Ordinal);
        return step with { Path = Renamed(step.Path), Body = JsonDocument.Parse(Renamed(step.Body.GetRawText())).RootElement };
    }

    /// <summary>The player numbers its keys alike for each unit: a unit's name is put before them.</summary>
    private sealed class Keyed(HttpClient inner, string unit) : HttpMessageHandler
    {
        public HttpClient Client => new(this) { BaseAddress = inner.BaseAddress };

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            using var copy = new HttpRequestMessage(request.Method, request.RequestUri) { Content = request.Content };
            foreach (var header in request.Headers)
                copy.Headers.TryAddWithoutValidation(header.Key, header.Key == "Idempotency-Key" ? header.Value.Select(v => $"{unit}-{v}") : header.Value);
            return await inner.SendAsync(copy, cancellationToken);
        }
    }
}
