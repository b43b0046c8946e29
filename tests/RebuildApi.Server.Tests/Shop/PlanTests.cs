using System.Text.Json.Nodes;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>The mixed-vintage unit of the demo, from its plan to its invoice lines.</summary>
public sealed class PlanTests
{
    private const string Unit = "/v1/units/sl-1047";

    [Fact]
    public async Task A_plan_becomes_a_kit_a_quote_an_approval_and_invoice_lines_that_reconcile()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        await Played(http);
        var none = await http.Send(HttpMethod.Get, Unit + "/kit", null);
        Assert.Equal("unknown-plan", (string)(await none.Problem())["code"]!);

        var plan = await http.Make(Unit + "/plans", """{ "person": "Wren" }""");
        Assert.Equal(("proven", 0), ((string)plan["status"]!, (int)plan["gap"]!["minor"]!));
        AssertSleeveIsCured(plan);

        var id = (string)plan["id"]!;
        await http.Make($"{Unit}/plans/{id}/approvals", """{ "person": "Wren" }""");
        var kept = await http.Make(Unit + "/reservations", """{ "person": "Wren" }""");
        var kit = await http.Read(Unit + "/kit");
        Assert.True((bool)kit["stillStands"]!);
        Assert.Equal(kit["picks"]!.AsArray().Select(p => (string)p!["stock"]!).Order(), kept["items"]!.AsArray().Select(r => (string)r!["stock"]!).Order());
        Assert.All(kit["picks"]!.AsArray(), p => Assert.Equal(0, (int)p!["short"]!));
        Assert.All(kit["assembly"]!.AsArray().Where(a => ((string)a!["position"]!).StartsWith("snap-ring-", StringComparison.Ordinal)), a => Assert.Single(a!["pieces"]!.AsArray()));
        Assert.Equal(["cover-bolts"], kit["assembly"]!.AsArray().Single(a => (string)a!["position"]! == "shift-cover")!["heldBy"]!.AsArray().Select(h => (string)h!));
        Assert.Equal((4, 1), (kit["tightening"]!.AsArray().Count, kit["lubricants"]!.AsArray().Count));
        var sheet = System.Net.WebUtility.HtmlDecode(await http.GetStringAsync("/units/sl-1047/assembly"));
        // 18 to 22 N·m by 1.355 818 N·m for a lbf·ft (NIST SP 811 B.8): 13.276 to 16.226, rounded inwards.
        Assert.Contains("18 … 22 N·m (13.3 … 16.2 ft·lbf)", sheet, StringComparison.Ordinal);
        Assert.Contains("invented, never for a real gearbox", sheet, StringComparison.Ordinal);
        Assert.Contains("1.7 … 1.9 L (1.8 … 2 US qt)", sheet, StringComparison.Ordinal);
        Assert.Contains("vendor,part", await http.GetStringAsync(Unit + "/kit/orders.csv"), StringComparison.Ordinal);

        var quote = await http.Make(Unit + "/quote", """{ "person": "Wren" }""");
        var parts = quote["lines"]!.AsArray().Where(l => (string)l!["need"]! == "required" && (string)l["sort"]! is "part" or "stock").Sum(l => (long)l!["net"]!["minor"]!);
        Assert.Equal((long)plan["cost"]!["parts"]!["minor"]!, parts);
        await http.Make(Unit + "/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Wren" }""");
        var invoiced = await http.Make(Unit + "/invoice-lines", """{ "person": "Wren" }""");
        Assert.True((bool)invoiced["reconciliation"]!["agrees"]!);
        Assert.Equal((long)quote["required"]!["gross"]!["minor"]!, (long)invoiced["reconciliation"]!["invoiced"]!["minor"]!);

        var shelf = await http.Make("/v1/allocations", "{}");
        Assert.True((bool)shelf["proven"]!);
        Assert.Equal("sl-1047", (string)shelf["misses"]!.AsArray().Single()!["unit"]!);

        using var dearer = await http.Send(HttpMethod.Patch, "/v1/parts/plunger", """{ "price": { "minor": 990, "currency": "EUR" } }""", ("If-Match", "*"));
        Assert.True(dearer.IsSuccessStatusCode);
        Assert.False((bool)(await http.Read($"{Unit}/plans/{id}"))["stillStands"]!);
        var rows = (await http.Read(Unit + "/plans"))["items"]!.AsArray();
        Assert.True((bool)rows.Single()!["chosen"]!);
    }

    [Fact]
    public async Task What_a_plan_asks_for_must_be_in_the_family()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/plans", """{ "person": "Ada", "keepOriginal": ["no-such"], "fixed": { "nor-such": "found" } }""");
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!);
        Assert.Equal(["/keepOriginal/0", "/fixed/nor-such"], pointers);
    }

    [Fact]
    public async Task A_part_that_is_spoken_of_must_be_such_a_part()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/plans", """
            { "person": "Ada", "candidates": [{ "position": "no-such" }, { "position": "third-gear", "price": { "minor": 1, "currency": "USD" }, "attributes": { "hand": "up" } }],
              "negligibleRisk": { "minor": 1, "currency": "USD" } }
            """);
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!).Order(StringComparer.Ordinal);
        Assert.Equal(["/candidates/0/position", "/candidates/1/attributes/hand", "/candidates/1/price/currency", "/negligibleRisk/currency"], pointers);
    }

    [Fact]
    public async Task A_ceiling_that_stands_in_the_way_is_said_in_the_shop_s_currency()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        await Played(http);
        var none = await http.Make(Unit + "/plans?dryRun=true", """{ "person": "Wren", "mostCost": { "minor": 100, "currency": "EUR" } }""");
        Assert.Equal("impossible", (string)none["status"]!);
        Assert.Contains(none["conflicts"]!.AsArray(), c => ((string)c!["text"]!).Contains("no more than 1.00 EUR", StringComparison.Ordinal));
        Assert.Contains(none["unlocks"]!.AsArray(), u => (string)u!["what"]! == "relaxed-limit" && (string)u["cost"]!["currency"]! == "EUR");
        Assert.Empty((await http.Read(Unit + "/plans"))["items"]!.AsArray());

        var kept = await http.Make(Unit + "/plans", """{ "person": "Wren", "mostCost": { "minor": 100, "currency": "EUR" } }""");
        var page = System.Net.WebUtility.HtmlDecode(await http.GetStringAsync("/units/sl-1047"));
        Assert.All(kept["conflicts"]!.AsArray().Concat(kept["unlocks"]!.AsArray()), why => Assert.Contains((string)why!["text"]!, page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_it_is_worth_to_read_first_is_said_in_money_and_the_quote_has_its_range()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        await Played(http);
        var plan = await http.Make(Unit + "/plans", """{ "person": "Wren" }""");
        var doubt = plan["toMeasure"]!.AsArray().Single(m => (string)m!["position"]! == "third-gear" && (bool)m["inPlan"]!)!;
        var (now, good, bad, chance) = ((long)plan["cost"]!["total"]!["minor"]!, (long)doubt["costIfGood"]!["minor"]!, (long)doubt["costIfBad"]!["minor"]!, (double)doubt["chanceGood"]!);
        // What is expected after reading it: the better of both ways each time, by its chance (expected value of perfect information).
        Assert.Equal(Math.Floor(now - ((chance * good) + ((1 - chance) * bad))), (double)(long)doubt["value"]!["minor"]!, 1.0);
        Assert.True(good < now && now < bad);
        Assert.Contains(plan["conditions"]!.AsArray(), c => (string)c!["code"]! == "measure-first" && ((string)c["subject"]!).StartsWith("third-gear/", StringComparison.Ordinal));
        Assert.Contains(plan["lines"]!.AsArray(), l => l!["nextBest"] is { } next && (long)next["extra"]!["minor"]! > 0);
        var range = (await http.Make(Unit + "/quote", """{ "person": "Wren" }"""))["range"]!;
        Assert.True((long)range["low"]!["minor"]! < (long)range["likely"]!["minor"]! && (long)range["likely"]!["minor"]! < (long)range["high"]!["minor"]!);
    }

    /// <summary>Third gear leaned over, fourth straight, one sleeve: whatever goes in, all three are of one form.</summary>
    private static void AssertSleeveIsCured(JsonObject plan)
    {
        var lines = plan["lines"]!.AsArray().ToDictionary(l => (string)l!["position"]!, l => (string)l!["candidate"]!);
        Assert.NotEqual("found", lines["third-gear"]);
        Assert.Equal("found", lines["input-gear"]);
        Assert.DoesNotContain("late", lines["sleeve-3-4"], StringComparison.Ordinal);
        Assert.DoesNotContain(plan["pairings"]!.AsArray(), p => (string)p!["outcome"]! == "incompatible");
    }

    private static async Task Played(HttpClient http)
    {
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
    }
}
