using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Calculations;

/// <summary>How tests ask for a calculation.</summary>
public static class Asking
{
    /// <summary>The result of a calculation; it must echo the request, name its formula and carry cautions.</summary>
    public static async Task<JsonObject> Calculate(this HttpClient http, string what, string body)
    {
        using var answer = await http.Send(HttpMethod.Post, "/v1/calculations/" + what, body);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == HttpStatusCode.OK, text);
        var whole = JsonNode.Parse(text)!.AsObject();
        Assert.NotEmpty(whole["understood"]!.AsObject());
        Assert.NotEmpty((string)whole["formula"]!["name"]!);
        Assert.NotEmpty((string)whole["formula"]!["source"]!);
        Assert.NotEmpty(whole["cautions"]!.AsArray());
        return whole;
    }

    /// <summary>The fields that a refusal blames.</summary>
    public static async Task<string[]> Refuse(this HttpClient http, string what, string body, HttpStatusCode status = HttpStatusCode.UnprocessableEntity)
    {
        using var answer = await http.Send(HttpMethod.Post, "/v1/calculations/" + what, body);
        Assert.True(answer.StatusCode == status, await answer.Content.ReadAsStringAsync());
        return [.. (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!)];
    }

    /// <summary>A number in an answer, by its path: <c>result.gap.value</c>.</summary>
    public static double At(this JsonNode node, string path) =>
        (double)path.Split('.').Aggregate(node, (n, name) => (int.TryParse(name, CultureInfo.InvariantCulture, out var i) ? n[i] : n[name])!)!;

    /// <summary>A text in an answer, by its path.</summary>
    public static string Text(this JsonNode node, string path) => (string)path.Split('.').Aggregate(node, (n, name) => (int.TryParse(name, CultureInfo.InvariantCulture, out var i) ? n[i] : n[name])!)!;

    /// <summary>A quantity as JSON.</summary>
    public static string Q(double value, string unit) => FormattableString.Invariant($$"""{ "value": {{value}}, "unit": "{{unit}}" }""");
}
