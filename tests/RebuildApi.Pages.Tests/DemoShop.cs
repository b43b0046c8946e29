using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using RebuildApi.TestKit;

namespace RebuildApi.Pages.Tests;

/// <summary>The gearbox of the demo, torn down, planned and quoted.</summary>
internal static class DemoShop
{
    public static async Task Play(HttpClient http)
    {
        await Send(http, "teardown");
        await Send(http, "shop");
        var plan = await Post(http, "/v1/units/sl-1047/plans", """{ "person": "Wren" }""");
        await Post(http, $"/v1/units/sl-1047/plans/{plan["id"]}/approvals", """{ "person": "Wren" }""");
        await Post(http, "/v1/units/sl-1047/quote", """{ "person": "Wren" }""");
    }

    /// <summary>The shop without a gearbox: its instruments, how it charges, its price list and its shelf.</summary>
    public static async Task Furnish(HttpClient http)
    {
        await Send(http, "teardown", path => path == "/v1/instruments");
        await Send(http, "shop");
    }

    /// <summary>Takes the gearbox of the demo on, gate by gate, with an exception over Bram's signature wherever one may be made.</summary>
    /// <param name="http">Who asks.</param>
    /// <param name="to">The stage that it is taken to.</param>
    public static async Task Go(HttpClient http, string to)
    {
        await Ask(http, HttpMethod.Put, "/v1/policy", """
            { "person": "Ada", "reason": "For a trial.", "exceptions": ["nothing-not-assessed", "nothing-open", "decided", "approval", "chosen-fitted", "as-built-readings", "family-gates"] }
            """);
        for (var next = await Next(http); next is not null; next = (string)next["to"]! == to ? null : await Next(http))
        {
            await Decide(http, next);
            foreach (var check in next["requirements"]!.AsArray().Where(r => !(bool)r!["met"]! && (string)r["requirement"]! == "family-tightened"))
                await Sign(http, (string)check!["requirement"]!);
            var left = (await Next(http))!["requirements"]!.AsArray().Where(r => (bool)r!["mayLeave"]!)
                .Select(r => $$"""{ "requirement": "{{r!["requirement"]}}", "reason": "A trial.", "person": "Bram" }""");
            await Post(http, "/v1/units/sl-1047/stages", $$"""{ "to": "{{next["to"]}}", "person": "Tove", "exceptions": [{{string.Join(", ", left)}}] }""");
        }
    }

    /// <summary>Gives the gearbox of the demo its code.</summary>
    public static Task Label(HttpClient http) => Post(http, "/v1/labels", """{ "unit": "sl-1047" }""");

    /// <summary>Signs for a check of the gearbox of the demo.</summary>
    public static Task Sign(HttpClient http, string check) =>
        Post(http, "/v1/units/sl-1047/sign-offs", $$"""{ "check": "{{check}}", "passed": true, "person": "Tove", "bench": "bench-3" }""");

    private static async Task<JsonNode?> Next(HttpClient http) => JsonNode.Parse(await http.GetStringAsync("/v1/units/sl-1047/stages"))!["next"];

    private static async Task Decide(HttpClient http, JsonNode gate)
    {
        var subjects = gate["requirements"]!.AsArray().SelectMany(r => r!["unmet"]!.AsArray()).Where(u => (bool)u!["safety"]!).Select(u => (string)u!["subject"]!);
        foreach (var subject in subjects.Distinct().Except(["interlock", "function-test"]))
            await Post(http, "/v1/units/sl-1047/decisions", $$"""{ "subject": "{{subject}}", "choice": "accept", "reason": "Tried by hand before {{gate["to"]}}, and holds.", "person": "Tove", "bench": "bench-3" }""");
    }

    private static async Task Send(HttpClient http, string file, Func<string, bool>? only = null)
    {
        var steps = JsonNode.Parse(await File.ReadAllTextAsync(Repository.PathTo($"src/RebuildApi.Server/Demo/{file}.json")))!["steps"]!.AsArray();
        foreach (var step in steps.Where(s => only?.Invoke((string)s!["path"]!) ?? true))
            await Ask(http, new HttpMethod((string)step!["method"]!), (string)step["path"]!, step["body"]!.ToJsonString());
    }

    private static Task<JsonNode> Post(HttpClient http, string path, string body) => Ask(http, HttpMethod.Post, path, body);

    private static async Task<JsonNode> Ask(HttpClient http, HttpMethod method, string path, string body)
    {
        using var request = new HttpRequestMessage(method, new Uri(path, UriKind.Relative)) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        request.Content.Headers.ContentType!.CharSet = null;
        request.Headers.Add("Idempotency-Key", Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(path + body)))[..32]);
        if (method == HttpMethod.Patch || method == HttpMethod.Put)
            request.Headers.Add("If-Match", "*");
        using var answer = await http.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }
}
