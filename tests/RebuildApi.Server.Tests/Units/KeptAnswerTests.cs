using System.Net;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

/// <summary>Answers about a unit are given again while nothing changed, and never after something did.</summary>
public sealed class KeptAnswerTests
{
    public static TheoryData<string> Addresses => ["verdicts", "clearances", "pairings", "neighbourhoods", "verdicts.csv", "verdicts.ndjson", "verdicts?units=in&limit=3"];

    [Theory]
    [MemberData(nameof(Addresses))]
    public async Task An_unchanged_unit_is_answered_with_the_same_bytes_and_headers(string address)
    {
        await using var shop = ShopServer.Open();
        var http = await shop.WithUnit();
        using var first = await http.GetAsync("/v1/units/u1/" + address);
        using var again = await http.GetAsync("/v1/units/u1/" + address);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(await first.Content.ReadAsByteArrayAsync(), await again.Content.ReadAsByteArrayAsync());
        Assert.Equal(first.Headers.ETag, again.Headers.ETag);
        Assert.Equal(first.Content.Headers.ContentType, again.Content.Headers.ContentType);
        Assert.Equal(Link(first), Link(again));
    }

    [Fact]
    public async Task A_client_that_has_it_gets_304_from_what_was_kept()
    {
        await using var shop = ShopServer.Open();
        var http = await shop.WithUnit();
        using var first = await http.GetAsync("/v1/units/u1/verdicts");
        using var again = await http.Send(HttpMethod.Get, "/v1/units/u1/verdicts", null, ("If-None-Match", first.Headers.ETag!.ToString()));
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.Empty(await again.Content.ReadAsByteArrayAsync());
    }

    [Fact]
    public async Task What_was_just_sent_is_in_the_next_answer()
    {
        await using var shop = ShopServer.Open();
        var http = await shop.WithUnit();
        for (var tenths = 0; tenths < 10; tenths++)
        {
            var before = await http.Read("/v1/units/u1/verdicts");
            await http.Make("/v1/units/u1/measurements", $$"""
                { "person": "Ada", "bench": "bench-1", "measurements": [{ "at": "third-gear/bore", "readings": [{ "value": 47.69{{tenths}}, "unit": "mm" }] }] }
                """);
            var after = await http.Read("/v1/units/u1/verdicts");
            Assert.NotEqual((string)before["inputsSha256"]!, (string)after["inputsSha256"]!);
            Assert.True((long)after["unitVersion"]! > (long)before["unitVersion"]!);
        }
    }

    [Fact]
    public async Task What_is_changed_in_the_shop_as_a_whole_is_in_the_next_answer()
    {
        await using var shop = ShopServer.Open();
        var http = await shop.WithUnit();
        var before = await http.Read("/v1/units/u1/verdicts");
        using var policy = await http.GetAsync("/v1/policy");
        using var changed = await http.Send(
            HttpMethod.Put, "/v1/policy", """{ "person": "Ada", "reason": "We want to be surer.", "rules": [{ "family": "brackenmere-4", "decision": "guarded", "probability": 0.999 }] }""", ("If-Match", policy.Headers.ETag!.ToString()));
        Assert.True(changed.IsSuccessStatusCode, await changed.Content.ReadAsStringAsync());
        var after = await http.Read("/v1/units/u1/verdicts");
        Assert.NotEqual((string)before["policy"]!, (string)after["policy"]!);
    }

    [Fact]
    public async Task Rules_that_are_gone_are_not_answered_for()
    {
        await using var shop = ShopServer.Open();
        var http = await shop.WithUnit();
        var before = (await http.Read("/v1/units/u1/verdicts"))["items"]!.AsArray().Count;
        shop.LosePlugins();
        Assert.NotEqual(before, (await http.Read("/v1/units/u1/verdicts"))["items"]!.AsArray().Count);
    }

    private static string Link(HttpResponseMessage answer) => answer.Headers.TryGetValues("Link", out var links) ? string.Join(",", links) : "";
}
