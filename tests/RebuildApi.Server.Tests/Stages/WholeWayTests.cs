using System.Text.Json.Nodes;
using RebuildApi.Server.Demo;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Stages;

/// <summary>The demo unit, all the way to hand-over.</summary>
public sealed class WholeWayTests
{
    private const string Unit = "sl-1047";

    [Fact]
    public async Task The_demo_unit_goes_out_with_its_exceptions_visible_and_never_without_its_signatures()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        Assert.True(await new TeardownPlayer(http, TextWriter.Null).Play(Teardown.Load()));
        await http.AllowExceptions();
        foreach (var _ in new[] { "decision", "assembly" })
            await http.PassWithExceptions(Unit);
        await Sign(http, 1, "interlock", passed: true);
        await Decide(http, "before");
        using var untightened = await http.Go(Unit, "final-test");
        Assert.Contains("requirement/family-tightened", (await untightened.Problem()).Unmet());
        await Sign(http, 5, "family-tightened", passed: true);
        await http.PassWithExceptions(Unit);

        await Decide(http, "after");
        await Sign(http, 2, "function-test", passed: true);
        await Sign(http, 3, "interlock", passed: false);
        using var failed = await http.Go(Unit, "handed-over");
        Assert.Contains("requirement/interlock", (await failed.Problem()).Unmet());

        await Sign(http, 4, "interlock", passed: true);
        var last = await http.PassWithExceptions(Unit);
        Assert.Equal(("handed-over", "met"), ((string)last["to"]!, (string)last["gate"]!.AsArray().Single(g => (string)g!["requirement"]! == "safety-signed")!["state"]!));
        var left = (await http.Read($"/v1/units/{Unit}/stages"))["leftOut"]!.AsArray();
        Assert.Contains(left, l => (string)l!["requirement"]! == "family-counter-end-play-read" && (string)l["state"]! == "excepted" && (string)l["person"]! == "Bram");
        Assert.Contains(left, l => (string)l!["requirement"]! == "approval" && (string)l["person"]! == "Bram");
    }

    [Fact]
    public async Task A_signature_counts_for_what_was_fitted_and_until_the_unit_goes_back_to_the_bench()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await server.PutAt("u1", "final-test");
        await http.Make("/v1/units/u1/sign-offs", """{ "check": "interlock", "passed": true, "person": "Ada", "bench": "b" }""");
        Assert.True(await IsMet(http, "interlock"));
        await http.Make("/v1/units/u1/components", """{ "position": "interlock-plunger", "role": "fitted", "origin": "new", "id": "plunger-2" }""");
        Assert.False(await IsMet(http, "interlock"));
        await http.Make("/v1/units/u1/sign-offs", """{ "check": "interlock", "passed": true, "person": "Ada", "bench": "b", "note": "With the new plunger." }""");
        Assert.True(await IsMet(http, "interlock"));
        await http.Gone("u1", "assembly", """, "note": "It jumps out of third." """);
        await server.PutAt("u1", "final-test");
        Assert.False(await IsMet(http, "interlock"));
    }

    private static Task<JsonObject> Sign(HttpClient http, int number, string check, bool passed) => http.Make(
        $"/v1/units/{Unit}/sign-offs", $$"""{ "check": "{{check}}", "passed": {{(passed ? "true" : "false")}}, "person": "Tove", "bench": "bench-3", "id": "s{{number}}" }""");

    private static async Task<bool> IsMet(HttpClient http, string requirement) =>
        (bool)(await http.Read("/v1/units/u1/stages"))["next"]!["requirements"]!.AsArray().Single(r => (string)r!["requirement"]! == requirement)!["met"]!;

    /// <summary>Signs whatever can hurt a person and does not surely conform.</summary>
    private static async Task Decide(HttpClient http, string when)
    {
        var next = (await http.Read($"/v1/units/{Unit}/stages"))["next"]!;
        var subjects = next["requirements"]!.AsArray().SelectMany(r => r!["unmet"]!.AsArray()).Where(u => (bool)u!["safety"]!).Select(u => (string)u!["subject"]!);
        foreach (var subject in subjects.Distinct().Except(["interlock", "function-test"]))
            await http.Make($"/v1/units/{Unit}/decisions", $$"""{ "subject": "{{subject}}", "choice": "accept", "reason": "Tried by hand {{when}}, and holds.", "person": "Tove", "bench": "bench-3" }""");
    }
}
