using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Requests;

public sealed class StrictBodyTests
{
    [Fact]
    public async Task A_misspelt_field_is_refused_with_the_nearest_name()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units", """{ "tag": "a", "famly": "b", "person": "c" }""");
        var errors = (await answer.Problem())["errors"]!.AsArray();
        Assert.Contains(errors, e => (string)e!["pointer"]! == "/famly" && (string)e["fix"]! == "Did you mean family?");
        Assert.Contains(errors, e => (string)e!["pointer"]! == "/family" && (string)e["code"]! == "missing-field");
    }

    [Fact]
    public async Task Everything_that_is_wrong_is_said_at_once()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var answer = await http.Send(HttpMethod.Post, "/v1/instruments", """
            { "name": 7, "type": "a b", "resolution": 0.001, "errorModel": "normal", "calibrationDue": "tomorrow", "name": "x" }
            """);
        var codes = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["code"]!).Order();
        Assert.Equal(["bad-id", "bad-time", "bare-number", "duplicate-field", "not-allowed", "wrong-type"], codes);
    }

    [Fact]
    public async Task Broken_JSON_is_located_by_line_and_column()
    {
        await using var server = ShopServer.Open();
        using var http = server.CreateClient();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units", "{\n  \"tag\": \"é\" \"family\": 1\n}");
        var problem = await answer.Problem();
        Assert.Equal("malformed-json", (string)problem["code"]!);
        Assert.Equal((2, 14), ((int)problem["line"]!, (int)problem["column"]!));
    }

    [Theory]
    [InlineData("0.0000001", "mm", "too-many-digits")]
    [InlineData("1e999", "mm", "out-of-range")]
    [InlineData("1e-40", "in", "too-many-digits")]
    [InlineData("1", "furlong", "unknown-unit-of-measure")]
    [InlineData("1", "N·m", "wrong-dimension")]
    [InlineData("99999999", "m", "out-of-range")]
    public async Task A_reading_that_can_t_be_kept_exactly_is_refused(string value, string unit, string code)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var body = $$"""{ "person": "Ada", "bench": "b", "measurements": [{ "at": "third-gear/length", "readings": [{ "value": {{value}}, "unit": "{{unit}}" }] }] }""";
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/measurements", body, ("Idempotency-Key", "k"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(code, (string)(await answer.Problem())["errors"]![0]!["code"]!);
    }

    [Fact]
    public async Task A_reading_keeps_the_number_as_it_was_sent()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await http.Make("/v1/units/u1/measurements", """
            { "person": "Ada", "bench": "b", "measurements": [{ "at": "third-gear/length", "readings": [{ "value": 1.5100, "unit": "in" }] }] }
            """);
        Assert.Contains("\"value\":1.5100,\"unit\":\"in\"", await http.GetStringAsync("/v1/units/u1/measurements"), StringComparison.Ordinal);
        Assert.Contains("\"value\":38.354,\"unit\":\"mm\"", await http.GetStringAsync("/v1/units/u1/measurements?units=mm"), StringComparison.Ordinal);
    }
}
