using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Stages;

/// <summary>How the tests let units through gates.</summary>
internal static class Gatekeeper
{
    public static Task<HttpResponseMessage> Go(this HttpClient http, string unit, string to, string more = "") =>
        http.Send(HttpMethod.Post, $"/v1/units/{unit}/stages", $$"""{ "to": "{{to}}", "person": "Ada"{{more}} }""");

    public static async Task<JsonObject> Gone(this HttpClient http, string unit, string to, string more = "")
    {
        using var answer = await http.Go(unit, to, more);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!.AsObject();
    }

    /// <summary>Takes the unit to a stage as a unit that came in a box and without a word.</summary>
    public static async Task GoToTeardown(this HttpClient http, string unit)
    {
        await http.Gone(unit, "pre-strip", """, "notAvailable": [{ "requirement": "complaint", "reason": "Bought as a core." }]""");
        await http.Gone(unit, "teardown", """, "notAvailable": [{ "requirement": "pre-strip-readings", "reason": "It came in a box." }]""");
    }

    /// <summary>A policy that allows an exception wherever one may be allowed.</summary>
    public static async Task AllowExceptions(this HttpClient http)
    {
        using var answer = await http.Send(HttpMethod.Put, "/v1/policy", """
            { "person": "Ada", "reason": "For a trial.", "exceptions": ["nothing-not-assessed", "nothing-open", "decided", "approval", "chosen-fitted", "as-built-readings", "family-gates"] }
            """, ("If-Match", "*"));
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    /// <summary>Passes the next gate, with an exception over Bram's signature for whatever may be left out.</summary>
    public static async Task<JsonObject> PassWithExceptions(this HttpClient http, string unit)
    {
        var next = (await http.Read($"/v1/units/{unit}/stages"))["next"]!;
        var left = next["requirements"]!.AsArray().Where(r => (bool)r!["mayLeave"]!)
            .Select(r => $$"""{ "requirement": "{{r!["requirement"]}}", "reason": "A trial.", "person": "Bram" }""");
        return await http.Gone(unit, (string)next["to"]!, $$""", "exceptions": [{{string.Join(", ", left)}}]""");
    }

    public static string[] Unmet(this JsonObject problem) => [.. problem["errors"]!.AsArray().Select(e => (string)e!["pointer"]!).Distinct()];
}
