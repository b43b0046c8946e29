using System.Net;
using System.Text.Json.Nodes;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Shop;

/// <summary>Quote, approval and invoice of a unit whose lines are the shop's own; amounts are computed here, no source.</summary>
public sealed class QuoteTests
{
    // 2 hubs at 118.00 = 236.00; 35 minutes at 60.00 an hour = 35.00; together 271.00, tax 54.20, 325.20. Paint 45.00 + 9.00, one time in four.
    private const string Quote = """
        { "person": "Ada", "extras": [
          { "id": "hub", "text": "Hub", "price": { "minor": 11800, "currency": "EUR" }, "quantity": 2 },
          { "id": "work", "text": "Bench work", "price": { "minor": 6000, "currency": "EUR" }, "sort": "labour", "quantity": 35 },
          { "id": "gear", "text": "If the gear proves bad", "price": { "minor": 4500, "currency": "EUR" }, "need": "recommended", "chance": 0.25 },
          { "id": "paint", "text": "Paint", "price": { "minor": 1000, "currency": "EUR" }, "need": "optional" }] }
        """;

    [Fact]
    public async Task A_quote_adds_up_by_need_and_says_its_range()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        var quote = await http.Make("/v1/units/u1/quote", Quote);
        Assert.Equal((27100, 5420, 32520), (Minor(quote["required"]!["net"]), Minor(quote["required"]!["tax"]), Minor(quote["required"]!["gross"])));
        Assert.Equal((32520, 33870, 37920), (Minor(quote["range"]!["low"]), Minor(quote["range"]!["likely"]), Minor(quote["range"]!["high"])));
        Assert.Equal("none", (string)quote["approval"]!["state"]!);
    }

    [Fact]
    public async Task What_was_agreed_to_is_what_is_invoiced_and_they_reconcile()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/quote", Quote);
        var approval = await http.Make("/v1/units/u1/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm, by telephone", "person": "Ada", "lines": ["paint"] }""");
        var invoiced = await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");
        Assert.Equal((33720, 37092), (Minor(approval["sum"]), Minor(approval["ceiling"])));
        Assert.Equal(["hub", "work", "paint"], invoiced["items"]!.AsArray().Select(l => (string)l!["of"]!));
        Assert.True((bool)invoiced["reconciliation"]!["agrees"]!);
        Assert.Equal(33720, Minor(invoiced["reconciliation"]!["invoiced"]));
    }

    [Fact]
    public async Task Nobody_is_invoiced_before_anyone_agreed()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/quote", Quote);
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");
        Assert.Equal("quote-overtaken", (string)(await answer.Problem())["code"]!);
    }

    [Theory]
    [InlineData(2000, "covered")]
    [InlineData(9000, "ask-again")]
    public async Task A_later_quote_is_covered_until_it_grows_beyond_the_agreed_share(int more, string state)
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/quote", Quote);
        await http.Make("/v1/units/u1/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Ada" }""");
        await http.Make("/v1/units/u1/quote", Quote.Replace("\"minor\": 11800", $"\"minor\": {11800 + (more / 2)}", StringComparison.Ordinal));
        Assert.Equal(state, (string)(await http.Read("/v1/units/u1/quote"))["approval"]!["state"]!);
    }

    [Fact]
    public async Task Work_that_was_found_later_is_invoiced_within_the_agreed_share_and_not_beyond()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await Agreed(http);
        static string Extra(string id, int price) => $$"""
            { "person": "Ada", "extras": [{ "id": "{{id}}", "text": "Found later", "price": { "minor": {{price}}, "currency": "EUR" } }] }
            """;
        await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");
        var within = await http.Make("/v1/units/u1/invoice-lines", Extra("small", 2000));
        using var beyond = await http.Send(HttpMethod.Post, "/v1/units/u1/invoice-lines", Extra("large", 3000));
        Assert.False((bool)within["reconciliation"]!["needsApproval"]!);
        Assert.Equal("approval-needed", (string)(await beyond.Problem())["code"]!);
    }

    [Fact]
    public async Task A_wrong_line_is_taken_off_and_written_anew()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await Agreed(http);
        var first = await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada", "lines": ["hub"] }""");
        var id = (string)first["items"]![0]!["id"]!;
        var mended = await http.Make("/v1/units/u1/invoice-lines", $$"""{ "person": "Ada", "voids": ["{{id}}"], "lines": ["hub", "work"] }""");
        Assert.Equal([-23600, 23600, 3500], mended["items"]!.AsArray().Select(l => Minor(l!["net"])));
        Assert.True((bool)mended["reconciliation"]!["agrees"]!);
    }

    [Fact]
    public async Task A_line_is_never_invoiced_twice()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await Agreed(http);
        await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada" }""");
        var again = await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Tove" }""");
        using var named = await http.Send(HttpMethod.Post, "/v1/units/u1/invoice-lines", """{ "person": "Ada", "lines": ["hub"] }""");
        Assert.Empty(again["items"]!.AsArray());
        Assert.Equal("/lines/0", (string)(await named.Problem())["errors"]![0]!["pointer"]!);
    }

    [Fact]
    public async Task A_tool_that_pulls_gets_each_line_once_and_goes_on_from_its_cursor()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await Agreed(http);
        await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada", "lines": ["hub"] }""");
        var first = (await http.Read("/v1/feeds/invoice-lines?limit=1"))["items"]!.AsArray().Single()!;
        await http.Make("/v1/units/u1/invoice-lines", """{ "person": "Ada", "lines": ["work"] }""");
        var cursor = (string)first["cursor"]!;
        var next = (await http.Read("/v1/feeds/invoice-lines?cursor=" + cursor))["items"]!.AsArray();
        var same = (await http.Read("/v1/feeds/invoice-lines?cursor=" + cursor))["items"]!.AsArray();
        Assert.Equal("work", (string)next.Single()!["of"]!);
        Assert.Equal((string)next.Single()!["id"]!, (string)same.Single()!["id"]!);
        Assert.Contains("hub,", await http.GetStringAsync("/v1/feeds/invoice-lines.csv"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_overtaken_quote_or_a_line_that_is_not_there_is_not_agreed_to()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithRates();
        await http.Make("/v1/units/u1/quote", Quote);
        await http.Make("/v1/units/u1/quote", Quote.Replace("Ada", "Tove", StringComparison.Ordinal));
        using var old = await http.Send(HttpMethod.Post, "/v1/units/u1/quote/approvals", """{ "number": 1, "by": "x", "person": "Ada" }""");
        using var unknown = await http.Send(HttpMethod.Post, "/v1/units/u1/quote/approvals", """{ "number": 2, "by": "x", "person": "Ada", "lines": ["chrome"] }""");
        Assert.Equal(HttpStatusCode.Conflict, old.StatusCode);
        Assert.Equal("/lines/0", (string)(await unknown.Problem())["errors"]![0]!["pointer"]!);
    }

    private static async Task Agreed(HttpClient http)
    {
        await http.Make("/v1/units/u1/quote", Quote);
        await http.Make("/v1/units/u1/quote/approvals", """{ "number": 1, "by": "Ferry Lane Farm", "person": "Ada" }""");
    }

    private static int Minor(JsonNode? money) => (int)money!["minor"]!;
}
