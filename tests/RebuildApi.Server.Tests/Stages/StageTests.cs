using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Stages;

public sealed class StageTests
{
    [Fact]
    public async Task A_gate_that_is_not_met_names_each_requirement_and_what_to_do()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var refused = await http.Go("u1", "pre-strip");
        var problem = await refused.Problem();
        Assert.Equal((HttpStatusCode.Conflict, "gate-not-met"), (refused.StatusCode, (string)problem["code"]!));
        var error = Assert.Single(problem["errors"]!.AsArray())!;
        Assert.Equal(("requirement/complaint", "unmet-requirement"), ((string)error["pointer"]!, (string)error["code"]!));
        Assert.Contains("complaint", (string)error["fix"]!, StringComparison.Ordinal);
        Assert.Equal("intake", (string)(await http.Read("/v1/units/u1"))["stage"]!);
    }

    [Fact]
    public async Task A_unit_that_came_in_a_box_goes_on_with_the_reason_kept_and_shown_ever_after()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.GoToTeardown("u1");
        var stages = await http.Read("/v1/units/u1/stages");
        Assert.Equal("teardown", (string)stages["stage"]!);
        Assert.Equal(
            [("complaint", "not-available", "Bought as a core.", "Ada", "pre-strip"), ("pre-strip-readings", "not-available", "It came in a box.", "Ada", "teardown")],
            stages["leftOut"]!.AsArray().Select(l => ((string)l!["requirement"]!, (string)l["state"]!, (string)l["reason"]!, (string)l["person"]!, (string)l["to"]!)));
        Assert.Equal(["passed", "passed", "here", "ahead", "ahead", "ahead", "ahead"], stages["way"]!.AsArray().Select(w => (string)w!["state"]!));
        Assert.All(stages["passings"]!.AsArray(), p => Assert.NotEmpty((string)p!["judgement"]!));
    }

    [Fact]
    public async Task Two_benches_with_the_same_thought_pass_one_gate_and_nobody_skips_one()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var skipped = await http.Go("u1", "assembly");
        await http.GoToTeardown("u1");
        using var again = await http.Go("u1", "teardown");
        Assert.Equal(["stage-conflict", "stage-conflict"], new[] { (string)(await skipped.Problem())["code"]!, (string)(await again.Problem())["code"]! });
    }

    [Fact]
    public async Task What_is_not_assessed_holds_a_unit_back_part_by_part()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.GoToTeardown("u1");
        using var refused = await http.Go("u1", "decision");
        var problem = await refused.Problem();
        Assert.Equal(["requirement/nothing-not-assessed"], problem.Unmet());
        Assert.Contains(problem["errors"]!.AsArray(), e => (string?)e!["got"] == "third-gear");
    }

    [Fact]
    public async Task A_unit_goes_back_or_away_unrepaired_only_with_a_reason()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.GoToTeardown("u1");
        using var silent = await http.Go("u1", "intake");
        Assert.Equal("/note", Assert.Single((await silent.Problem()).Unmet()));
        await http.Gone("u1", "intake", """, "note": "The owner has said more." """);
        await http.Gone("u1", "returned-unrepaired", """, "note": "Not worth it." """);
        var stages = await http.Read("/v1/units/u1/stages");
        Assert.Equal("returned-unrepaired", (string)stages["stage"]!);
        Assert.Null(stages["next"]);
        Assert.Equal(["pre-strip", "teardown", "intake", "returned-unrepaired"], stages["passings"]!.AsArray().Select(p => (string)p!["to"]!));
    }

    [Fact]
    public async Task A_unit_whose_rules_are_gone_can_still_be_given_back()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        server.LosePlugins();
        using var on = await http.Go("u1", "pre-strip", """, "notAvailable": [{ "requirement": "complaint", "reason": "None." }]""");
        Assert.Equal("rules-unavailable", (string)(await on.Problem())["code"]!);
        Assert.NotEmpty((string)(await http.Read("/v1/units/u1/stages"))["whyNot"]!);
        Assert.Null((await http.Gone("u1", "returned-unrepaired", """, "note": "The owner wants it back." """))["judgement"]);
    }

    [Fact]
    public async Task The_stage_is_no_field_to_be_edited()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Patch, "/v1/units/u1", """{ "stage": "handed-over" }""", ("If-Match", "*"));
        Assert.Equal("/stage", Assert.Single((await answer.Problem()).Unmet()));
    }

    [Fact]
    public async Task An_exception_needs_a_policy_that_allows_it()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.GoToTeardown("u1");
        const string exception = """, "exceptions": [{ "requirement": "nothing-not-assessed", "reason": "In a hurry.", "person": "Ada" }]""";
        using var refused = await http.Go("u1", "decision", exception);
        await http.AllowExceptions();
        using var safety = await http.Go("u1", "decision", exception);
        using var wrong = await http.Send(HttpMethod.Put, "/v1/policy", """{ "person": "Ada", "reason": "Faster.", "exceptions": ["interlock"] }""", ("If-Match", "*"));
        Assert.Equal("/exceptions/0", Assert.Single((await refused.Problem()).Unmet()));
        // The interlock of this family is safety-critical and was not read: no policy helps.
        Assert.Contains("hurt", (string)(await safety.Problem())["detail"]!, StringComparison.Ordinal);
        Assert.Equal("/exceptions/0", Assert.Single((await wrong.Problem()).Unmet()));
    }
}
