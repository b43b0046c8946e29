using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Calculations;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.History;

/// <summary>The shop's own rules, signed edition by edition. Invented values; computed here, no source.</summary>
public sealed class PolicyTests
{
    [Fact]
    public async Task The_shop_s_own_limit_stands_before_the_family_s_and_the_answer_names_the_edition()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8780");
        var before = await http.Read("/v1/units/u1/verdicts");
        Assert.Equal(("default", "conforming"), ((string)before["policy"]!, Outcome(before)));
        using var put = await Put(http, "\"p-0\"", """
            { "person": "Ada", "reason": "They run loose.", "limits": [{ "family": "brackenmere-4", "subject": "third-gear/bore", "high": { "value": 1.8778, "unit": "in" }, "source": "Our comebacks" }] }
            """);
        Assert.Equal(("\"p-1\"", HttpStatusCode.OK), (put.Headers.ETag!.Tag, put.StatusCode));
        var after = await http.Read("/v1/units/u1/verdicts");
        Assert.Equal(("1", "nonconforming"), ((string)after["policy"]!, Outcome(after)));
    }

    [Fact]
    public async Task Where_a_person_can_be_hurt_the_shop_s_window_is_never_wider_than_the_family_s()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        const string limit = """
            { "person": "Ada", "reason": "Ours.", "limits": [{ "family": "brackenmere-4", "subject": "interlock-plunger/length", "low": { "value": LOW, "unit": "in" }, "high": { "value": 0.442, "unit": "in" }, "source": "Our bench" }] }
            """;
        using var wider = await Put(http, "*", limit.Replace("LOW", "0.4329", StringComparison.Ordinal));
        using var narrower = await Put(http, "*", limit.Replace("LOW", "0.4340", StringComparison.Ordinal));
        Assert.Equal("/limits/0", (string)(await wider.Problem())["errors"]![0]!["pointer"]!);
        Assert.Equal(HttpStatusCode.OK, narrower.StatusCode);
    }

    [Fact]
    public async Task Readings_of_an_overdue_instrument_stop_counting_where_the_shop_blocks_them()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var due = await http.Send(HttpMethod.Patch, "/v1/instruments/mic-25", """{ "calibrationDue": "2026-01-31" }""", ("If-Match", "*"));
        await http.Bore("u1", "1.8780");
        Assert.Equal("conforming", Outcome(await http.Read("/v1/units/u1/verdicts")));
        using var put = await Put(http, "*", """{ "person": "Ada", "reason": "No more guessing.", "overdue": "block" }""");
        Assert.Equal("not-assessed", Outcome(await http.Read("/v1/units/u1/verdicts")));
    }

    // 1.8786 in lies 5 µm inside the limit of 1.8788 in at u = 2.3 µm: sure to 98.6 %.
    [Fact]
    public async Task A_rule_for_one_criticality_of_one_family_counts_there_and_nowhere_else()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8786");
        Assert.Equal("conforming", Outcome(await http.Read("/v1/units/u1/verdicts")));
        using var other = await Put(http, "*", """{ "person": "Ada", "reason": "x", "rules": [{ "family": "ostrand-5", "decision": "guarded", "probability": 0.999 }] }""");
        Assert.Equal("conforming", Outcome(await http.Read("/v1/units/u1/verdicts")));
        using var own = await Put(http, "*", """
            { "person": "Ada", "reason": "x", "rules": [{ "family": "brackenmere-4", "criticality": "functional", "decision": "guarded", "probability": 0.999 }] }
            """);
        Assert.Equal("inconclusive", Outcome(await http.Read("/v1/units/u1/verdicts")));
        using var simple = await Put(http, "*", """
            { "person": "Ada", "reason": "x", "rules": [{ "family": "brackenmere-4", "criticality": "functional", "decision": "simple-acceptance", "probability": 0.999 },
              { "criticality": "functional", "decision": "guarded", "probability": 0.999 }] }
            """);
        Assert.Equal("conforming", Outcome(await http.Read("/v1/units/u1/verdicts")));
    }

    [Fact]
    public async Task Editions_are_signed_kept_and_changed_only_at_the_version_that_was_seen()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var first = await Put(http, "\"p-0\"", """{ "person": "Ada", "reason": "As agreed.", "probability": 0.9 }""");
        using var late = await Put(http, "\"p-0\"", """{ "person": "Ben", "reason": "Me too.", "probability": 0.8 }""");
        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);
        Assert.Equal(1, (int)(await late.Problem())["currentVersion"]!);
        using var none = await http.Send(HttpMethod.Put, "/v1/policy", """{ "person": "Ben", "reason": "Me too." }""");
        Assert.Equal(HttpStatusCode.PreconditionRequired, none.StatusCode);
        using var second = await Put(http, "\"p-1\"", """{ "person": "Ben", "reason": "Looser.", "probability": 0.8 }""");
        var editions = (await http.Read("/v1/policy/editions"))["items"]!.AsArray();
        Assert.Equal(["As agreed.", "Looser."], editions.Select(e => (string)e!["reason"]!));
        Assert.Equal("Ben", (string)(await http.Read("/v1/policy"))["person"]!);
    }

    [Fact]
    public async Task A_policy_for_what_no_family_has_is_refused_field_by_field()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await Put(http, "*", """
            { "person": "Ada", "reason": "x", "rules": [{ "decision": "guarded", "probability": 0.9 }, { "family": "nobody-1", "decision": "guarded", "probability": 0.9 }],
              "limits": [{ "family": "brackenmere-4", "subject": "third-gear/bire", "source": "x", "high": { "value": 1, "unit": "in" } },
                { "family": "brackenmere-4", "subject": "third-gear/bore", "source": "x", "low": { "value": 2, "unit": "in" }, "high": { "value": 1, "unit": "in" } }] }
            """);
        Assert.Equal(["/rules/0", "/rules/1/family", "/limits/0/subject", "/limits/1"], (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!));
        Assert.Empty((await http.Read("/v1/policy/editions"))["items"]!.AsArray());
    }

    [Fact]
    public async Task A_decision_keeps_the_edition_that_it_was_made_under()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Bore("u1", "1.8780");
        await http.Make("/v1/units/u1/decisions", """{ "subject": "third-gear/bore", "choice": "reuse", "reason": "Good.", "person": "Ada", "bench": "bench-1" }""");
        using var put = await Put(http, "*", """{ "person": "Ada", "reason": "x", "probability": 0.99 }""");
        var decision = (await http.Read("/v1/units/u1/verdicts"))["items"]!.AsArray().SelectMany(p => p!["verdicts"]!.AsArray()).Single(v => (string)v!["subject"]! == "third-gear/bore")!["decision"]!;
        Assert.False((bool)decision["sameInputs"]!);
    }

    private static Task<HttpResponseMessage> Put(HttpClient http, string version, string body) => http.Send(HttpMethod.Put, "/v1/policy", body, ("If-Match", version));

    private static string Outcome(JsonObject verdicts) => (string)verdicts["items"]!.AsArray()
        .SelectMany(p => p!["verdicts"]!.AsArray()).Single(v => (string)v!["subject"]! == "third-gear/bore")!["outcome"]!;
}
