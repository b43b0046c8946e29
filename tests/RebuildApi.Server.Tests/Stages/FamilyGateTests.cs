using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Stages;

/// <summary>What a family itself wants done before a gearbox goes on. All of it is invented, as the shipped families are.</summary>
public sealed class FamilyGateTests
{
    private const string Read = "family-counter-end-play-read";
    private const string Tightened = "family-tightened";

    [Fact]
    public async Task The_next_gate_names_what_the_family_wants_with_the_reason_and_is_shut_without_it()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await server.PutAt("u1", "assembly");

        var (read, tightened) = (await Requirement(http, Read), await Requirement(http, Tightened));
        using var refused = await http.Go("u1", "final-test");

        Assert.Equal((false, "exception", false), ((bool)read["met"]!, (string)read["leave"]!, (bool)read["mayLeave"]!));
        Assert.Equal((false, "never", false), ((bool)tightened["met"]!, (string)tightened["leave"]!, (bool)tightened["mayLeave"]!));
        Assert.StartsWith("It can't be got at", (string)read["reason"]!, StringComparison.Ordinal);
        Assert.Equal("counter-end-play", (string)Assert.Single(read["unmet"]!.AsArray())!["subject"]!);
        var problem = await refused.Problem();
        Assert.Equal((HttpStatusCode.Conflict, "gate-not-met"), (refused.StatusCode, (string)problem["code"]!));
        Assert.Superset(new HashSet<string> { $"requirement/{Read}", $"requirement/{Tightened}" }, problem.Unmet().ToHashSet());
        Assert.Contains("tightening list", (string)problem["errors"]!.AsArray().Single(e => (string)e!["pointer"]! == $"requirement/{Tightened}")!["fix"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_as_built_and_a_signature_meet_them_until_something_is_changed()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await server.PutAt("u1", "assembly");

        await http.Make("/v1/units/u1/trials", """
            { "clearance": "counter-end-play", "person": "Ada", "bench": "b", "pieces": [{ "member": "065" }], "readings": [{ "value": 0.012, "unit": "in" }, { "value": 0.012, "unit": "in" }] }
            """);
        await Sign(http, Tightened, passed: false);
        var failed = (bool)(await Requirement(http, Tightened))["met"]!;
        await Sign(http, Tightened, passed: true);

        Assert.False(failed);
        Assert.True((bool)(await Requirement(http, Read))["met"]!);
        Assert.True((bool)(await Requirement(http, Tightened))["met"]!);
        await http.Make("/v1/units/u1/components", """{ "position": "extension-gasket", "role": "fitted", "origin": "new", "id": "gasket-2" }""");
        Assert.False((bool)(await Requirement(http, Tightened))["met"]!);
    }

    [Fact]
    public async Task An_exception_needs_the_family_s_word_and_the_policy_s()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await server.PutAt("u1", "assembly");

        using var without = await http.Go("u1", "final-test", Exception(Read));
        await http.AllowExceptions();
        using var never = await http.Go("u1", "final-test", Exception(Tightened));

        Assert.Equal("/exceptions/0", Assert.Single((await without.Problem()).Unmet()));
        Assert.Equal("/exceptions/0", Assert.Single((await never.Problem()).Unmet()));
        Assert.Equal((true, false), ((bool)(await Requirement(http, Read))["mayLeave"]!, (bool)(await Requirement(http, Tightened))["mayLeave"]!));
    }

    [Fact]
    public async Task What_can_hurt_a_person_is_never_left_out_whatever_the_policy()
    {
        await using var server = ShopServer.Open();
        using var http = await Of(server, "kestermere-6");
        await http.AllowExceptions();
        await server.PutAt("u6", "final-test");

        var locked = await Requirement(http, "family-third-rail-locked", "u6");

        Assert.Equal(("never", false, true), ((string)locked["leave"]!, (bool)locked["mayLeave"]!, (bool)locked["unmet"]![0]!["safety"]!));
        await Sign(http, "family-third-rail-locked", passed: true, "u6");
        Assert.True((bool)(await Requirement(http, "family-third-rail-locked", "u6"))["met"]!);
    }

    [Fact]
    public async Task What_was_not_tried_while_it_was_whole_is_left_out_with_a_reason_that_stays_visible()
    {
        await using var server = ShopServer.Open();
        using var http = await Of(server, "ostrand-5");
        await http.Gone("u6", "pre-strip", """, "notAvailable": [{ "requirement": "complaint", "reason": "Bought as a core." }]""");

        using var refused = await http.Go("u6", "teardown", """, "notAvailable": [{ "requirement": "pre-strip-readings", "reason": "It came in a box." }]""");
        await http.Gone("u6", "teardown", """
            , "notAvailable": [{ "requirement": "pre-strip-readings", "reason": "It came in a box." }, { "requirement": "family-oil-asked-tried", "reason": "It came dry." }]
            """);

        Assert.Equal(["requirement/family-oil-asked-tried"], (await refused.Problem()).Unmet());
        var left = (await http.Read("/v1/units/u6/stages"))["leftOut"]!.AsArray();
        Assert.Contains(left, l => (string)l!["requirement"]! == "family-oil-asked-tried" && (string)l["reason"]! == "It came dry.");
    }

    [Fact]
    public async Task A_test_that_was_tried_meets_it_whatever_it_showed()
    {
        await using var server = ShopServer.Open();
        using var http = await Of(server, "ostrand-5");
        await http.Gone("u6", "pre-strip", """, "notAvailable": [{ "requirement": "complaint", "reason": "Bought as a core." }]""");

        await http.Make("/v1/units/u6/tests", """{ "test": "oil-asked", "shown": false, "person": "Ada", "bench": "b" }""");

        Assert.True((bool)(await Requirement(http, "family-oil-asked-tried", "u6"))["met"]!);
        await http.Gone("u6", "teardown");
    }

    [Theory]
    [InlineData("oil-held")]
    [InlineData("family-third-rail-locked")]
    [InlineData("family-counter-end-play-read")]
    public async Task Only_what_the_family_wants_signed_can_be_signed_for(string check)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();

        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/sign-offs", $$"""{ "check": "{{check}}", "passed": true, "person": "Ada", "bench": "b" }""");

        var error = Assert.Single((await answer.Problem())["errors"]!.AsArray())!;
        Assert.Equal(("/check", check), ((string)error["pointer"]!, (string)error["got"]!));
        Assert.Equal(["interlock", "function-test", "family-tightened", "family-oil-held"], error["allowed"]!.AsArray().Select(a => (string)a!));
    }

    [Fact]
    public async Task The_family_says_what_is_tightened_filled_and_wanted_in_both_units_and_that_it_is_invented()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        var family = await http.Read("/v1/families/brackenmere-4");

        var bolts = family["tightening"]!.AsArray().Single(f => (string)f!["id"]! == "extension-bolts")!;
        Assert.Equal((55m, "N·m", 65m), ((decimal)bolts["torque"]!["low"]!["value"]!, (string)bolts["torque"]!["low"]!["unit"]!, (decimal)bolts["torque"]!["high"]!["value"]!));
        // NIST SP 811 (2008) B.8: 1 lbf·ft = 1.355 818 N·m.
        Assert.Equal((55 / 1.355818, "ft·lbf"), ((double)bolts["torqueImperial"]!["low"]!["value"]!, (string)bolts["torqueImperial"]!["low"]!["unit"]!), Near);
        Assert.Equal(("invented", "safety-critical"), ((string)bolts["torque"]!["source"]!["kind"]!, (string)bolts["criticality"]!));
        var oil = Assert.Single(family["lubricants"]!.AsArray())!;
        Assert.Contains("SAE J306", (string)oil["grade"]!, StringComparison.Ordinal);
        Assert.Equal((1.7m, "L"), ((decimal)oil["quantity"]!["low"]!["value"]!, (string)oil["quantity"]!["low"]!["unit"]!));
        // The same: 1 US liquid quart = 0.946 352 9 L.
        Assert.Equal((1.7 / 0.9463529, "US qt"), ((double)oil["quantityUs"]!["low"]!["value"]!, (string)oil["quantityUs"]!["low"]!["unit"]!), Near);
        Assert.Equal((15m, 59m), ((decimal)oil["temperature"]!["low"]!["value"]!, (decimal)oil["temperatureFahrenheit"]!["low"]!["value"]!));
        Assert.Equal([Read, Tightened, "family-oil-held"], family["gates"]!.AsArray().Select(g => (string)g!["requirement"]!));
    }

    private static bool Near((double Value, string Unit) one, (double Value, string Unit) other) => one.Unit == other.Unit && Math.Abs(one.Value - other.Value) < 1e-5;

    private static string Exception(string requirement) => $$""", "exceptions": [{ "requirement": "{{requirement}}", "reason": "In a hurry.", "person": "Bram" }]""";

    private static async Task<JsonNode> Requirement(HttpClient http, string id, string unit = "u1") =>
        (await http.Read($"/v1/units/{unit}/stages"))["next"]!["requirements"]!.AsArray().Single(r => (string)r!["requirement"]! == id)!;

    private static Task<JsonObject> Sign(HttpClient http, string check, bool passed, string unit = "u1") => http.Make(
        $"/v1/units/{unit}/sign-offs", $$"""{ "check": "{{check}}", "passed": {{(passed ? "true" : "false")}}, "person": "Tove", "bench": "bench-3" }""");

    private static async Task<HttpClient> Of(ShopServer server, string family)
    {
        var http = server.CreateClient();
        await http.Make("/v1/units", $$"""{ "id": "u6", "tag": "u6", "family": "{{family}}", "person": "Ada" }""");
        return http;
    }
}
