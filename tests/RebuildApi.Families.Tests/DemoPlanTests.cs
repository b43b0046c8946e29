using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using RebuildApi.Checkers.Plans;
using RebuildApi.Server.Demo;

namespace RebuildApi.Families.Tests;

/// <summary>The plans of the demo, asked for over HTTP and looked through by the independent checker from what the service gives out alone.</summary>
public sealed class DemoPlanTests : IDisposable
{
    private const string Unit = "/v1/units/sl-1047";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("rebuild-demo-plans-");
    private readonly WebApplicationFactory<Program> _server;

    public DemoPlanTests() => _server = new WebApplicationFactory<Program>().WithWebHostBuilder(b =>
    {
        b.UseSetting("Rebuild:DataFolder", _folder.FullName);
        b.UseSetting("Rebuild:Access", "this-machine");
        b.UseSetting("Logging:LogLevel:Default", "Warning");
        b.UseSetting("Rebuild:PlanSeconds", "300");
        b.UseSetting("Rebuild:RequestSeconds", "600");
    });

    public void Dispose()
    {
        _server.Dispose();
        // The plug-in host clears its shadow copies at the same moment, so a file may go between being listed and being deleted.
        for (var tries = 0; tries < 10 && Directory.Exists(_folder.FullName); tries++)
        {
            try
            {
                _folder.Delete(recursive: true);
            }
            catch (IOException)
            {
            }
        }
    }

    [Fact]
    public async Task Every_plan_of_the_demo_stands_before_the_checker()
    {
        using var http = await Played();
        var plans = new Dictionary<string, JsonNode>();
        foreach (var objective in new[] { "least-cost", "soonest-ready", "most-original", "most-conservative" })
            plans[objective] = await Stands(http, $$"""{ "person": "Wren", "objective": "{{objective}}" }""");

        Assert.True(Cost(plans["least-cost"], "total") <= Cost(plans["most-conservative"], "total"));
        Assert.True(Cost(plans["most-conservative"], "comeback") <= Cost(plans["least-cost"], "comeback"));
        Assert.True((int)plans["soonest-ready"]["readyInDays"]! <= plans.Values.Min(p => (int)p["readyInDays"]!));
        Assert.True(Kept(plans["most-original"]) >= plans.Values.Max(Kept));
    }

    [Fact]
    public async Task A_part_that_is_only_spoken_of_is_planned_like_any_other_and_stands_before_the_checker()
    {
        using var http = await Played();
        var plan = await Stands(http, """
            { "person": "Wren", "candidates": [{ "position": "third-gear", "label": "offer on the telephone", "price": { "minor": 100, "currency": "EUR" }, "vendor": "Invented",
              "attributes": { "dog.form": "straight", "dog.drive-flank": "sound", "dog.coast-flank": "sound", "dog.stop": "none", "dog.teeth": "n36", "vintage": "early", "ratio-set": "wide", "hand": "right" } }] }
            """);

        Assert.Equal("sent#1", (string)plan["lines"]!.AsArray().Single(l => (string)l!["position"]! == "third-gear")!["candidate"]!);
    }

    /// <summary>Makes a plan, and holds what it says of itself against what the checker makes of the unit as the plan would have it.</summary>
    private static async Task<JsonNode> Stands(HttpClient http, string body)
    {
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        using var answer = await http.PostAsync(Unit + "/plans", content);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        var plan = JsonNode.Parse(text)!;
        Assert.Equal("proven", (string)plan["status"]!);
        var planned = JsonSerializer.Deserialize(await http.GetStringAsync($"{Unit}/plans/{(string)plan["id"]!}/snapshot"), ContractJson.Default.UnitSnapshot)!;
        var family = Shipped.Of(planned.Family.Id);

        var check = PlanChecker.Check(family, planned, Claimed.By(plan, family));

        Assert.True(check.Faults.Count == 0, $"{(string)plan["objective"]!}: {string.Join("; ", check.Faults)}");
        Assert.Equal(family.Pairings.Length, check.Pairings);
        AddsUp(plan);
        return plan;
    }

    /// <summary>64.00 an hour, each operation rounded by itself; parts, labour and what is unsure come to the total.</summary>
    private static void AddsUp(JsonNode plan)
    {
        Assert.Equal(plan["lines"]!.AsArray().Sum(l => l!["price"] is { } price ? (long)price["minor"]! : 0), Cost(plan, "parts"));
        Assert.Equal(plan["work"]!.AsArray().Sum(w => (long)Math.Round((decimal)w!["minutes"]! * 6400 / 60, MidpointRounding.AwayFromZero)), Cost(plan, "labour"));
        Assert.Equal(Cost(plan, "parts") + Cost(plan, "labour") + Cost(plan, "comeback"), Cost(plan, "total"));
    }

    private static long Cost(JsonNode plan, string what) => (long)plan["cost"]![what]!["minor"]!;

    private static int Kept(JsonNode plan) => plan["lines"]!.AsArray().Count(l => (string)l!["disposition"]! != "replace");

    private async Task<HttpClient> Played()
    {
        var http = _server.CreateClient();
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Shop()));
        return http;
    }
}
