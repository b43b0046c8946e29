using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Diagnosis;

public sealed class DiagnosisTests
{
    private const string Said = "/v1/families/brackenmere-4/diagnoses";

    [Fact]
    public async Task What_is_said_and_what_is_recorded_are_diagnosed_alike()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        await http.Make("/v1/units", """
            { "id": "u1", "tag": "T-1", "family": "brackenmere-4", "person": "Ada", "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third", "load": "drive" }] }
            """);
        await http.Make("/v1/units/u1/tests", """{ "test": "linkage-off", "shown": false, "person": "Ada", "bench": "b" }""");
        await http.Make("/v1/units/u1/findings", """
            { "person": "Ada", "bench": "b", "findings": [{ "position": "third-gear", "attribute": { "id": "dog.drive-flank", "value": "leaned" } }] }
            """);

        var recorded = await http.Read("/v1/units/u1/diagnosis");
        var said = await http.Make(Said, """
            { "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third", "load": "drive" }], "tests": [{ "test": "linkage-off", "shown": false }],
              "findings": [{ "position": "third-gear", "attribute": { "id": "dog.drive-flank", "value": "leaned" } }] }
            """);

        Assert.Equal(said["causes"]!.ToJsonString(), recorded["causes"]!.ToJsonString());
        Assert.Equal("third-flanks-leaned", (string)recorded["causes"]![0]!["cause"]!);
        Assert.Equal("drive", (string)(await http.Read("/v1/units/u1"))["complaint"]![0]!["load"]!);
    }

    [Fact]
    public async Task The_answer_shows_each_prior_with_its_range_and_what_speaks_for_and_against()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        var answer = await http.Make(Said, """{ "complaint": [{ "symptom": "noise-gone-in-direct" }], "checks": 500 }""");

        Assert.All(answer["causes"]!.AsArray(), c =>
        {
            Assert.InRange((double)c!["probability"]!, (double)c["low"]!, (double)c["high"]!);
            Assert.InRange((double)c["prior"]!["best"]!, (double)c["prior"]!["low"]!, (double)c["prior"]!["high"]!);
        });
        var weight = answer["causes"]![0]!["weights"]![0]!;
        Assert.Equal("symptom:noise-gone-in-direct", (string)weight["clue"]!);
        Assert.True((double)weight["oddsFactor"]! > 1);
        Assert.StartsWith("Speaks for it:", (string)answer["causes"]![0]!["reasons"]![0]!["text"]!, StringComparison.Ordinal);
        Assert.InRange((double)answer["unexplained"]![0]!["probability"]!, 0.01, 0.5);
        var perMinute = answer["checks"]!.AsArray().Select(c => (double)c!["perMinute"]!).ToArray();
        Assert.Equal(perMinute.OrderDescending(), perMinute);
    }

    [Fact]
    public async Task Where_being_wrong_costs_money_the_next_check_is_chosen_by_what_it_saves()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        var answer = await http.Make(Said, """
            { "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third" }], "costs": [{ "cause": "third-rocks", "repair": 20000, "missed": 60000 }] }
            """);
        var planned = await http.Make(Said, """
            { "complaint": [{ "symptom": "jumps-out-under-load", "gear": "third" }], "savings": [{ "look": "pocket-clearance", "saving": 5000 }] }
            """);

        Assert.Equal("third-rocked", (string)answer["checks"]![0]!["look"]!);
        Assert.True((double)answer["checks"]![0]!["saving"]! > 0);
        Assert.Equal("pocket-clearance", (string)planned["checks"]![0]!["look"]!);
    }

    [Fact]
    public async Task Once_it_is_apart_only_checks_on_the_bench_are_named()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        var answer = await http.Make(Said, """{ "complaint": [{ "symptom": "clash" }], "apart": true, "checks": 500 }""");

        Assert.All(answer["checks"]!.AsArray(), c => Assert.Equal("teardown", (string)c!["stage"]!));
    }

    [Theory]
    [InlineData("""{ "complaint": [{ "symptom": "jumps-out" }] }""", "unknown-symptom")]
    [InlineData("""{ "complaint": [{ "symptom": "clash", "gear": "sixth" }] }""", "unknown-gear")]
    [InlineData("""{ "tests": [{ "test": "linkage-of", "shown": true }] }""", "unknown-test")]
    [InlineData("""{ "costs": [{ "cause": "third-flank-leaned", "repair": 1, "missed": 1 }] }""", "unknown-cause")]
    [InlineData("""{ "findings": [{ "position": "third-gear", "sound": true, "damage": { "class": "scuffing", "extent": "slight" } }] }""", "contradiction")]
    [InlineData("""{ "findings": [{ "position": "thrid-gear", "sound": true }] }""", "unknown-position")]
    [InlineData("""{ "limits": [{ "subject": "third-play", "standing": "above" }] }""", "unknown-subject")]
    public async Task What_the_family_does_not_know_is_refused_field_by_field(string body, string code)
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();

        using var answer = await http.Send(HttpMethod.Post, Said, body);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(code, (string)(await answer.Problem())["errors"]![0]!["code"]!);
    }

    [Fact]
    public async Task Counts_come_into_the_priors_only_when_a_person_accepts_them_and_then_into_the_next_diagnosis()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        foreach (var (unit, cause) in new[] { ("u1", "third-rocks"), ("u2", "third-rocks"), ("u3", "detent-weak"), ("u4", "detent-weak") })
            await Confirm(server, http, unit, cause, close: unit != "u4");
        var before = await Prior(http, "third-rocks");

        using var stale = await http.Send(HttpMethod.Post, "/v1/families/brackenmere-4/priors", """{ "units": 4, "reason": "r", "person": "Ada" }""");
        await http.Make("/v1/families/brackenmere-4/priors", """{ "units": 3, "reason": "Looked through.", "person": "Ada" }""");
        var after = await Prior(http, "third-rocks");
        var answer = await http.Make(Said, "{}");

        // Declared 0.08 worth 20 units, 2 of 3 closed units: (0.08 * 20 + 2) / (20 + 3).
        Assert.Equal((0.08, 0.08, 2), ((double)before["declared"]!, (double)before["stands"]!["best"]!, (int)before["confirmed"]!));
        Assert.Equal(3.6 / 23, (double)before["proposed"]!["best"]!, 1e-9);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, stale.StatusCode);
        Assert.Equal(3.6 / 23, (double)after["stands"]!["best"]!, 1e-9);
        Assert.Equal(1, (int)answer["priors"]!);
        var ranked = answer["causes"]!.AsArray().Single(c => (string)c!["cause"]! == "third-rocks")!;
        Assert.Equal((3, 2, 23.0), ((int)ranked["units"]!, (int)ranked["confirmed"]!, (double)ranked["priorStrength"]!));
        var update = (await http.Read("/v1/families/brackenmere-4/priors"))["accepted"]![0]!;
        Assert.Equal(("Ada", "Looked through.", 1), ((string)update["person"]!, (string)update["reason"]!, (int)update["number"]!));
    }

    private static async Task Confirm(ShopServer server, HttpClient http, string unit, string cause, bool close)
    {
        await http.Make("/v1/units", $$"""{ "id": "{{unit}}", "tag": "{{unit}}", "family": "brackenmere-4", "person": "Ada" }""");
        await http.Make($"/v1/units/{unit}/causes", $$"""{ "causes": ["{{cause}}"], "reason": "Seen and cured.", "person": "Ada", "bench": "b" }""");
        if (close)
            await server.PutAt(unit, "handed-over");
    }

    private static async Task<JsonNode> Prior(HttpClient http, string cause) =>
        (await http.Read("/v1/families/brackenmere-4/priors"))["causes"]!.AsArray().Single(c => (string)c!["cause"]! == cause)!;
}
