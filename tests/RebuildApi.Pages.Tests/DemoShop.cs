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
        if (method == HttpMethod.Patch)
            request.Headers.Add("If-Match", "*");
        using var answer = await http.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }
}
