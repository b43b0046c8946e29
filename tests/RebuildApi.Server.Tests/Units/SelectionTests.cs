using System.Globalization;
using RebuildApi.Server.Tests.Kit;

namespace RebuildApi.Server.Tests.Units;

public sealed class SelectionTests
{
    [Fact]
    public async Task Nothing_read_means_that_no_ring_is_chosen()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        var answer = await http.Make("/v1/units/u1/selections", "{}");
        Assert.Equal("not-assessed", (string)answer["outcome"]!);
        Assert.NotEmpty(answer["leftOut"]!.AsArray());
    }

    [Fact]
    public async Task What_is_not_in_the_family_is_named_by_its_pointer()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        using var answer = await http.Send(HttpMethod.Post, "/v1/units/u1/selections", """
            { "clearances": ["no-such"], "series": [{ "position": "case", "series": "no-such" }], "available": [{ "member": "no-such", "count": 1 }] }
            """);
        var pointers = (await answer.Problem())["errors"]!.AsArray().Select(e => (string)e!["pointer"]!).Order(StringComparer.Ordinal);
        Assert.Equal(["/available/0/member", "/clearances/0", "/series/0/position", "/series/0/series"], pointers);
    }

    [Fact]
    public async Task A_gap_that_is_read_from_its_parts_gets_the_ring_nearest_its_target()
    {
        await using var server = ShopServer.Open();
        using var http = await server.WithUnit();
        // seat − hub − gear leaves 67.818 − 27.178 − 37.897 = 2.743 mm for ring and play; 0.381 mm is wanted, so the ring is to be 2.362 mm: one from the middle of its series.
        await http.Make("/v1/units/u1/measurements", $$"""
            { "person": "Ada", "bench": "b", "instrument": "mic-25", "measurements": [{{Reads("mainshaft/third-seat", 67.818m)}}, {{Reads("hub-3-4/width", 27.178m)}}, {{Reads("third-gear/length", 37.897m)}}] }
            """);
        var best = (await http.Make("/v1/units/u1/selections", """{ "clearances": ["third-end-play"], "cuts": "never" }"""))["best"]!;
        var pick = best["picks"]!.AsArray().Single(p => (string)p!["choice"]! == "snap-ring-3-4")!;
        var members = (await http.Read($"/v1/families/{ShopServer.Family}"))["series"]!.AsArray().Single(s => (string)s!["id"]! == "snap-ring-3-4")!["members"]!.AsArray();
        var nearest = members.MinBy(m => Math.Abs((decimal)m!["thickness"]!["value"]! - 2.362m))!;
        Assert.InRange(members.IndexOf(nearest), 1, members.Count - 2);
        Assert.Equal((string)nearest["id"]!, (string)pick["members"]![0]!);
    }

    private static string Reads(string at, decimal millimetres)
    {
        var reading = $"{{ \"value\": {millimetres.ToString(CultureInfo.InvariantCulture)}, \"unit\": \"mm\" }}";
        return $"{{ \"at\": \"{at}\", \"readings\": [{string.Join(", ", Enumerable.Repeat(reading, 6))}] }}";
    }
}
