using System.Net;
using Microsoft.Extensions.Time.Testing;
using RebuildApi.Server.Tests.Kit;
using RebuildApi.TestKit;

namespace RebuildApi.Server.Tests.Records;

public sealed class CustomerTests
{
    private static Task TakeIn(HttpClient http, string unit, string customer) => http.Make("/v1/units", $$"""
        { "id": "{{unit}}", "tag": "{{unit}}", "family": "brackenmere-4", "person": "Ada", "customer": "{{customer}}", "words": "Whines in third." }
        """);

    [Fact]
    public async Task Everything_of_one_customer_and_nothing_of_another_comes_as_one_object()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await TakeIn(http, "a1", "Ferry Lane Farm");
        await TakeIn(http, "b1", "Other");
        await http.Bore("a1", "47.69");
        await http.Bore("a1", "1.8776");
        await http.Bore("b1", "1.8777");
        await http.Make("/v1/units/a1/decisions", """{ "subject": "third-gear", "choice": "replace", "reason": "New one is on the shelf.", "person": "Ada", "bench": "b" }""");

        var text = await http.GetStringAsync("/v1/customers/export?customer=Ferry%20Lane%20Farm");
        var all = System.Text.Json.Nodes.JsonNode.Parse(text)!.AsObject();

        Assert.Equal((string)(await http.Read("/v1/audit/verification"))["head"]!, (string)all["head"]!);
        Assert.True((bool)all["end"]!);
        var unit = Assert.Single(all["units"]!.AsArray())!;
        Assert.Equal("a1", (string)unit["unit"]!["id"]!);
        var kinds = unit["entries"]!.AsArray().Select(e => (string)e!["entry"]!["kind"]!).ToArray();
        Assert.Equal(2, kinds.Count(k => k == "measurement"));
        Assert.Contains("decision", kinds);
        Assert.Contains("47.69", text, StringComparison.Ordinal);
        Assert.DoesNotContain("1.8777", text, StringComparison.Ordinal);
        Assert.Equal("decision", (string)Assert.Single(unit["judgements"]!.AsArray())!["purpose"]!);
    }

    [Fact]
    public async Task A_unit_that_was_given_another_name_still_belongs_to_the_first_one_too()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        await TakeIn(http, "a1", "Ferry Lane Farm");
        using var renamed = await http.Send(HttpMethod.Patch, "/v1/units/a1", """{ "customer": "Ferry Lane Farm & Son" }""", ("If-Match", "*"));

        Assert.Equal(["Ferry Lane Farm", "Ferry Lane Farm & Son"], (await http.Read("/v1/customers"))["items"]!.AsArray().Select(c => (string)c!["customer"]!));
        Assert.Single((await http.Read("/v1/customers/export?customer=Ferry%20Lane%20Farm"))["units"]!.AsArray());
        using var none = await http.GetAsync("/v1/customers/export?customer=Nobody");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        Assert.Equal("unknown-customer", (string)(await none.Problem())["code"]!);
    }

    [Fact]
    public async Task What_is_older_than_the_years_of_the_setting_is_due_and_nothing_goes_by_itself()
    {
        var clock = new FakeTimeProvider(SnapshotBuilder.Noon);
        await using var server = ShopServer.Open().At(clock).With("Rebuild:KeepYears", "6").With("Rebuild:BackupAt", "off");
        using var http = await server.WithUnit();
        await TakeIn(http, "a1", "Old");
        clock.Advance(TimeSpan.FromDays(366 * 6));
        await TakeIn(http, "b1", "New");

        var due = Assert.Single((await http.Read("/v1/customers?due=true"))["items"]!.AsArray())!;

        Assert.Equal(("Old", true), ((string)due["customer"]!, (bool)due["due"]!));
        Assert.Equal(SnapshotBuilder.Noon.AddYears(6), (DateTimeOffset)due["reviewFrom"]!);
        Assert.Equal(2, (await http.Read("/v1/customers"))["items"]!.AsArray().Count);
    }
}
